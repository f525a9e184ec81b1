"""The page on the example home: ``python app.py``, then open the address it prints."""

from costcompare.views.dashboard import serve

if __name__ == "__main__":
    serve()
