"""What is printed and taken under the layout: lists, safety notes, and the set of pages."""
