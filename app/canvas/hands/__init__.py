"""What hands do on the canvas: keys, pointers, touch, menus, and how gestures are run."""
