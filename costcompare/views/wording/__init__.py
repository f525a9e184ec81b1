"""Every sentence that a screen or a report shows, made from the results alone.

Pure functions: results in, text out. A number in a sentence always comes from the same
object as the chart beside it. ``headline`` the first screen, ``bill`` to ``sureness``
the six parts in their order, ``naming`` what things are called.
"""
