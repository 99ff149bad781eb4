"""From proofed records to pages.

`publish_shop` makes the whole site of a shop: gather every session, check what was gathered, write the site beside the
last good one, then swap the two.
"""

from publish.errors import PublishError, UnsettledError
from publish.site import Published, publish_shop

__all__ = ["PublishError", "Published", "UnsettledError", "publish_shop"]
