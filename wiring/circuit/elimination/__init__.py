"""Direct solution of a conductance network: nodes are taken out star by star, many at once."""
