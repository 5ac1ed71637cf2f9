"""The look of the editor: colours, type, signs and the painter that puts a picture on a Qt surface."""
