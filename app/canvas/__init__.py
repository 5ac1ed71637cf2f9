"""The plan canvas: view, layers, hit testing and gestures."""
