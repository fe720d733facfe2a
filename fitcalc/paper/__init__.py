"""The result on paper and for machines: PDF, DXF, SVG, CSV and XLSX, painted from what `present` says."""
