"""What each behaviour named in the catalogue is electrically: one small file each, one table of them all."""
