"""The local app: pages that a person works in, served to this machine alone.

A page joins as a `Section`: its routes, how large a request it takes, and what it may use of the browser. Who may come
in, from where, and what leaves with every answer is the same for all of them and stands in `desk.app.safety`.
"""

from desk.app.build import make_app
from desk.app.section import Section
from desk.app.serve import PortError, serve

__all__ = ["PortError", "Section", "make_app", "serve"]
