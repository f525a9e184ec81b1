"""The visit form: what an adviser asks and writes down while walking through a home.

::

    document -> form (a tree that assets/visit.js draws)
    an answer of the browser -> deeds -> document, checked by the reader of cases

``questions``   what is asked, stop by stop, and why it is asked in that order
``answers``     one answer written into a document, or taken out of it
``listed``      rooms and doorways: listing, adding, removing, renaming
``proposals``   options: adding from a few kinds, duplicating, removing
``deeds``       everything that a browser may ask for, by its name
``intake``      documents that come from a browser or a file: what is refused, what is made plain
``form``        the form of a document, as a tree
``doors``       the addresses under which a browser asks
"""
