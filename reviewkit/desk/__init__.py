"""The local page on which a person confirms or corrects a round."""

from reviewkit.desk.server import serve
from reviewkit.desk.session import Session

__all__ = ["Session", "serve"]
