"""Paper: pages in millimetres, the sheets that are drawn on them, and the writers of file formats."""
