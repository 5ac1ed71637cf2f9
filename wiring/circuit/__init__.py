"""From plan and positions to figures: networkx graph, branch arrays, Newton, readings."""
