"""The carry sheet: one offline page for a phone under the layout."""
