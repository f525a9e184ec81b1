"""The page: one home, today against each choice, in a browser.

``make_app`` builds it, ``serve`` shows it on this machine.
"""

from costcompare.views.dashboard.application import make_app
from costcompare.views.dashboard.serving import serve

__all__ = ["make_app", "serve"]
