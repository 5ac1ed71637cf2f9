"""The whole model of a layout's wiring: document, circuit, studies, findings, drawings, sheets. No Qt."""
