"""What the canvas paints: layers, marks, labels, and the pictures kept of them."""
