"""How cells discharge: two wells of charge, an EMF, a resistance that grows, and when it is over."""
