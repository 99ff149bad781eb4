"""A whole shop as one file, and back: a bag by BagIt 1.0 (RFC 8493) in a ZIP archive.

`export_shop` packs, `import_shop` checks and unpacks; what comes out is byte for byte what went in.
"""

from capture.archive.pack import Packed, export_shop
from capture.archive.unpack import import_shop

__all__ = ["Packed", "export_shop", "import_shop"]
