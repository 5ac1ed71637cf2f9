"""What the hand does on the canvas, as generators that know no toolkit."""
