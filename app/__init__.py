"""The editor: windows, canvas, inspectors and printing. It shows numbers and never computes one."""
