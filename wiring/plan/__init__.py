"""The document of one layout: frozen records, changed only by making a new one."""
