"""What a plan carries at worst, over all the ways its switches, buttons and motors can stand in use."""
