"""How each kind of part looks from above: plain silhouettes in millimetres about the part's centre."""
