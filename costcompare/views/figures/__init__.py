"""What the charts of the screen show, made from the results alone.

``rows`` holds plain values for bars that the page draws itself; ``maps``, ``coldest_day``
and ``setting`` are plotly figures; ``look`` is their colours and type.
"""
