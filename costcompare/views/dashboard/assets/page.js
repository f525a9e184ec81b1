// The page's own scripts: the slider looks its finished page up in the book, nothing is computed.
(function () {
  "use strict";

  function headlineTexts(headline) {
    return [
      headline.lead,
      headline.now,
      headline.now_note,
      headline.after,
      headline.after_note,
      headline.warm_now,
      headline.warm_after,
      headline.warm_note,
      headline.slim_bill,
      headline.slim_warmth,
      headline.slim_bill, // once more, in the drawer
      headline.slim_warmth,
    ];
  }

  function nearestPage(pages, setting) {
    return pages.reduce((best, page) =>
      Math.abs(page.setting - setting) < Math.abs(best.setting - setting) ? page : best
    );
  }

  // A copy of the chart with its marks and their line on the setting that is shown.
  function chartAt(chart, marks, setting) {
    const data = chart.data.slice();
    marks.forEach((mark) => {
      const line = data[mark - 1];
      const place = line.x.indexOf(setting);
      data[mark] = Object.assign({}, data[mark], { x: [setting], y: [line.y[place]] });
    });
    const shapes = chart.layout.shapes.slice();
    shapes[0] = Object.assign({}, shapes[0], { x0: setting, x1: setting });
    return { data: data, layout: Object.assign({}, chart.layout, { shapes: shapes }) };
  }

  function repaint(setting, night, book, first) {
    const outputs = 23;
    const same = window.dash_clientside.no_update;
    if (!first) {
      return Array(outputs).fill(same);
    }
    // Until the settings of this choice are worked out, the page shows it as compared.
    if (!isBookOf(book, first)) {
      const unknown = Array(7).fill("…");
      return headlineTexts(first.headline).concat(
        [first.waiting],
        unknown,
        [same, first.waiting, "is-waiting"]
      );
    }
    const chapter = book[night];
    const page = nearestPage(chapter.pages, setting);
    const chart =
      night === "wanted" ? chapter.chart : chartAt(chapter.chart, book.marks, page.setting);
    return headlineTexts(page.headline).concat([
      page.answer,
      page.night_answer,
      page.bills[0],
      page.warm[0],
      page.degrees[0],
      page.bills[1],
      page.warm[1],
      page.degrees[1],
      chart,
      page.answer,
      "",
    ]);
  }

  const isBookOf = (book, first) =>
    Boolean(book && first && book.key === first.key && book.choice === first.choice);

  // Settings are worked out a few at a time, after everything else of the page has been asked
  // for: each answer asks for the next, until all are there or the visitor has moved on.
  const LET_OTHERS_BY_MS = 250;
  let sweepNumber = 0;
  let sweepTimer = null;
  function sweepOn(first, swept, book) {
    if (!first || isBookOf(book, first)) {
      return "";
    }
    const goesOn = swept && swept.key === first.key && swept.choice === first.choice;
    clearTimeout(sweepTimer);
    if (!goesOn || swept.there < swept.of) {
      sweepNumber += 1;
      const next = { data: sweepNumber };
      const ask = () => window.dash_clientside.set_props("sweep-on", next);
      sweepTimer = setTimeout(ask, goesOn ? 0 : LET_OTHERS_BY_MS);
    }
    return goesOn && swept.there < swept.of ? `${swept.there} of ${swept.of} are there.` : "";
  }

  // Ranges take longer than all else: a step is asked for after another once the settings are
  // there, until the visitor has moved on.
  let rangeNumber = 0;
  let rangeIsAsked = false;
  function rangeOn(first, ranged, book, worked) {
    const triggered = window.dash_clientside.callback_context.triggered_id;
    if (triggered !== "book") {
      rangeIsAsked = false;
    }
    const isMine = first && ranged && ranged.key === first.key && ranged.choice === first.choice;
    const isReady = Boolean(isMine && ranged.share >= 1);
    if (first && isBookOf(book, first) && !isReady && !rangeIsAsked) {
      rangeNumber += 1;
      rangeIsAsked = true;
      const next = { data: rangeNumber };
      setTimeout(() => window.dash_clientside.set_props("range-on", next), 0);
    }
    if (isReady && worked && worked.key === first.key) {
      window.dash_clientside.page.rangesThere(worked.document, first.choice);
    }
    const done = isMine ? Math.round(100 * ranged.share) : 0;
    const words = `How sure these figures are is being worked out: ${done} % is done.`;
    return [isReady ? "" : words, !isReady, !isReady, isReady];
  }

  function isUnready(first, book) {
    return !isBookOf(book, first);
  }

  // Slider and night agree: moving the slider leaves "as wanted", choosing "as wanted" moves it
  // back, and a home that was worked out again starts there.
  let shownKey = null;
  function agree(setting, night, book) {
    const same = window.dash_clientside.no_update;
    const triggered = window.dash_clientside.callback_context.triggered_id;
    if (!book) {
      return [same, same];
    }
    if (book.key !== shownKey) {
      shownKey = book.key;
      return [book.start, "wanted"];
    }
    if (night !== "wanted" || setting === book.start) {
      return [same, same];
    }
    return triggered === "setting" ? [same, "held"] : [book.start, same];
  }

  // Says the answer to a screen reader once the slider has come to rest.
  let spoken = 0;
  function speak(lead) {
    spoken += 1;
    const mine = spoken;
    return new Promise((resolve) =>
      setTimeout(() => resolve(mine === spoken ? lead : window.dash_clientside.no_update), 800)
    );
  }

  // Elements from a tree of the server: text stays text, so no name can become markup.
  function build(tree) {
    if (typeof tree === "string") {
      return document.createTextNode(tree);
    }
    const element = document.createElement(tree.tag);
    Object.entries(tree.attributes).forEach(([name, text]) => element.setAttribute(name, text));
    element.append(...tree.inside.map(build));
    return element;
  }

  function draw(tree, id) {
    document.getElementById(id).replaceChildren(...(tree ? [build(tree)] : []));
  }

  window.dash_clientside = Object.assign({}, window.dash_clientside, {
    page: { repaint, sweepOn, rangeOn, isUnready, agree, speak, draw },
  });

  // The slim result line shows itself when the figures on top are out of sight.
  function watchTiles() {
    const tiles = document.getElementById("tiles");
    const chooser = document.getElementById("chooser");
    if (!tiles || !chooser || !window.IntersectionObserver) {
      return Boolean(tiles && chooser);
    }
    new IntersectionObserver((entries) => {
      const entry = entries[entries.length - 1];
      const above = !entry.isIntersecting && entry.boundingClientRect.top < 0;
      chooser.classList.toggle("is-stuck", above);
    }).observe(tiles);
    return true;
  }

  if (!watchTiles()) {
    const waiting = new MutationObserver(() => {
      if (watchTiles()) {
        waiting.disconnect();
      }
    });
    waiting.observe(document.documentElement, { childList: true, subtree: true });
  }
})();
