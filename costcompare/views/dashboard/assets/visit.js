// The visit form: draws the server's tree, sends answers one after the other, keeps every step.
// No rule about a home stands here: what an answer may be, the server's reader of cases says.
(function () {
  "use strict";

  const MOST_STEPS = 40;
  const LARGEST_HISTORY = 1500000; // letters; a browser keeps about five million for a tab
  const TYPING_PAUSE_MS = 350;
  const WIDE = "(min-width: 1180px)"; // page and form fit beside each other
  const LARGEST_FILE = 200000; // bytes; the server checks again
  const LARGEST_BILLS = 1500000;
  const PASTE = "ask-paste-bills";

  let history = null; // {opened, steps, at}: documents, and which of them is in force
  let openedDocument = null;
  let drawn = null; // the document whose form stands on the page
  let weighed = null; // the last document whose ranges were there, and for which choice
  const waiting = []; // edits that have not been answered yet, in their order
  let asking = false;

  const place = (id) => document.getElementById(id);
  const setProps = (id, props) => window.dash_clientside.set_props(id, props);
  const current = () => history.steps[history.at];

  // ------------------------------------------------------------ asking the server

  async function ask(door, body, signal) {
    const choice = place("choice");
    body = Object.assign({ option: choice ? choice.value : "" }, body);
    if (weighed && !body.earlier) {
      body.earlier = weighed.document;
    }
    const answer = await fetch(`visit/${door}`, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      signal: signal,
    });
    if (answer.status === 413) {
      return { faults: ["That is too large for this page."] };
    }
    const type = answer.headers.get("Content-Type") || "";
    return type.includes("json") ? answer.json() : { faults: ["The page could not answer that."] };
  }

  const UNREACHED = "The program does not answer; nothing is lost. Is it still running?";

  async function pump() {
    if (asking || !history) {
      return;
    }
    asking = true;
    while (waiting.length) {
      const edit = waiting[0];
      if (!edit.weigh) {
        setProps("said", { children: "Working it out …" });
      }
      try {
        takeOver(edit, await answerTo(edit));
      } catch (_error) {
        say([UNREACHED]);
      }
      waiting.shift();
    }
    asking = false;
  }

  function answerTo(edit) {
    if (edit.step) {
      return stepTo(history.at + edit.step);
    }
    if (edit.weigh) {
      return ask("form", { document: current(), earlier: edit.earlier });
    }
    if (edit.file) {
      return ask("open", edit.file);
    }
    if (edit.save) {
      return ask("save", { document: current() });
    }
    if (edit.document) {
      return ask("form", { document: edit.document }).then((answer) =>
        answer.form ? Object.assign(answer, { document: edit.document }) : answer
      );
    }
    return ask("change", { document: current(), edit: edit });
  }

  async function stepTo(at) {
    if (at < 0 || at >= history.steps.length) {
      return { faults: [] };
    }
    const answer = await ask("form", { document: history.steps[at] });
    if (answer.form) {
      history = Object.assign({}, history, { at: at });
      answer.moved = true;
    }
    return answer;
  }

  function takeOver(edit, answer) {
    const faults = answer.faults || [];
    if (edit.weigh) {
      if (answer.form) {
        drawForm(answer.form);
        setProps("narrowed", { children: answer.narrowed || "" });
      }
      return;
    }
    showFaults(edit, faults);
    if (answer.text) {
      download(new Blob([answer.text], { type: "application/toml" }), answer.name);
      setProps("said", { children: `Saved as ${answer.name}.` });
      return;
    }
    if (answer.document && !same(answer.document, current())) {
      push(answer.document);
    } else if (!answer.moved) {
      setProps("said", { children: "Nothing was changed." });
    }
    if (answer.form) {
      if (!faults.length) {
        settleDrafts(edit);
      }
      drawForm(answer.form);
    }
    if (answer.moved) {
      keep();
    }
    if (edit.clears && !faults.length) {
      place(edit.clears).value = "";
    }
    if (answer.told) {
      setProps("narrowed", { children: answer.told });
    }
    if (edit.opens) {
      openNewest(edit.opens);
    }
  }

  const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

  // ------------------------------------------------------------ steps

  function push(newest) {
    const steps = history.steps.slice(0, history.at + 1).concat([newest]).slice(-MOST_STEPS);
    while (steps.length > 2 && JSON.stringify(steps).length > LARGEST_HISTORY) {
      steps.shift();
    }
    history = { opened: history.opened, steps: steps, at: steps.length - 1 };
    keep();
  }

  function keep() {
    setProps("history", { data: history });
    setProps("document", { data: current() });
    tellOfBills();
    showSteps();
  }

  // With bills a home takes longer to work out: the sign of work says why.
  const billRows = (bills) => (Array.isArray(bills) ? bills : (bills && bills.rows) || []);
  const hasBills = (bills) => Boolean(billRows(bills).length || (bills && bills.file));

  function tellOfBills() {
    document.documentElement.toggleAttribute("data-bills", hasBills(current().bills));
  }

  function showSteps() {
    place("undo").disabled = !history || history.at === 0;
    place("redo").disabled = !history || history.at === history.steps.length - 1;
    place("reopen").disabled = !history || same(current(), openedDocument);
  }

  // Called when the page opens: the steps of this tab, if they belong to the case that is served.
  function begin(opened, stored) {
    const known = stored && stored.opened === opened.key && Array.isArray(stored.steps);
    const whole = known && stored.steps.length > 0 && Boolean(stored.steps[stored.at]);
    history = whole ? stored : { opened: opened.key, steps: [opened.document], at: 0 };
    openedDocument = opened.document;
    tellOfBills();
    whenDrawn("undo", () => {
      showSteps();
      showView(viewOf(window.location.href));
    });
    pump();
    return [history, current()];
  }

  function whenDrawn(id, act) {
    if (place(id)) {
      act();
    } else {
      setTimeout(() => whenDrawn(id, act), 50);
    }
  }

  // ------------------------------------------------------------ faults

  function fieldOf(edit) {
    return edit.from ? place(edit.from) : null;
  }

  function showFaults(edit, faults) {
    const field = fieldOf(edit);
    if (field && place(`${field.id}-wrong`)) {
      mark(field, faults);
      say([]);
    } else {
      say(faults);
    }
  }

  function mark(field, faults) {
    place(`${field.id}-wrong`).textContent = faults.join(" ");
    if (faults.length) {
      field.setAttribute("aria-invalid", "true");
    } else {
      field.removeAttribute("aria-invalid");
    }
  }

  function say(faults) {
    const list = place("faults");
    list.replaceChildren(
      ...faults.map((text) => {
        const line = document.createElement("p");
        line.textContent = text;
        return line;
      })
    );
    if (faults.length) {
      list.scrollIntoView({ block: "nearest" });
    }
  }

  // ------------------------------------------------------------ drawing

  // Brings what stands on the page to the new tree in place, so that the focus, open lines and
  // letters that are being typed stay as they are.
  function morph(parent, trees) {
    trees.forEach((tree, number) => {
      const there = parent.childNodes[number];
      if (!there) {
        parent.append(build(tree));
      } else if (!fits(there, tree)) {
        there.replaceWith(build(tree));
      } else if (typeof tree === "string") {
        if (there.data !== tree) {
          there.data = tree;
        }
      } else {
        renew(there, tree);
      }
    });
    while (parent.childNodes.length > trees.length) {
      parent.lastChild.remove();
    }
  }

  function fits(there, tree) {
    if (typeof tree === "string") {
      return there.nodeType === Node.TEXT_NODE;
    }
    return (
      there.nodeType === Node.ELEMENT_NODE &&
      there.localName === tree.tag &&
      there.id === (tree.attributes.id || "") &&
      (there.dataset.field || "") === (tree.attributes["data-field"] || "")
    );
  }

  const OWN = ["open", "aria-invalid", "data-draft"]; // what the page sets by itself

  function renew(there, tree) {
    const attributes = tree.attributes;
    there.getAttributeNames().forEach((name) => {
      if (!(name in attributes) && !OWN.includes(name)) {
        there.removeAttribute(name);
      }
    });
    Object.entries(attributes).forEach(([name, text]) => {
      if (there.getAttribute(name) !== text) {
        there.setAttribute(name, text);
      }
    });
    if (there.classList.contains("wrong")) {
      return; // its sentence stays until its field is answered
    }
    if (there.localName !== "input") {
      morph(there, tree.inside);
    }
    if (!there.dataset.draft) {
      setValue(there, attributes);
    }
  }

  function setValue(element, attributes) {
    if (element.localName === "select") {
      element.value = attributes["data-value"];
    } else if (element.type === "checkbox") {
      element.checked = "checked" in attributes;
    } else if (element.localName === "input") {
      element.value = attributes.value || "";
    }
  }

  function build(tree) {
    if (typeof tree === "string") {
      return document.createTextNode(tree);
    }
    const element = document.createElement(tree.tag);
    Object.entries(tree.attributes).forEach(([name, text]) => element.setAttribute(name, text));
    element.append(...tree.inside.map(build));
    setValue(element, tree.attributes);
    return element;
  }

  function drawForm(form) {
    morph(place("visit-form"), [form]);
    drawn = current();
    place("visit-form").setAttribute("aria-busy", "false");
  }

  // Called when the ranges of a home are there: the form says then what each answer is worth,
  // and what the last answers did to the range.
  function rangesThere(document, choice) {
    if (weighed && weighed.choice === choice && same(weighed.document, document)) {
      return;
    }
    const earlier = weighed ? weighed.document : document;
    weighed = { document: document, choice: choice };
    drawn = null;
    if (history && isOpen() && same(document, current())) {
      enqueue({ weigh: true, earlier: earlier });
    }
  }

  function openNewest(list) {
    const cards = place(`stop-${list}`).querySelectorAll(".stop-inside > details.row-card");
    const newest = cards[cards.length - 1];
    if (newest) {
      newest.open = true;
      const first = newest.querySelector("input");
      if (first) {
        first.focus();
      }
    }
  }

  // ------------------------------------------------------------ answers

  const isAnswer = (element) => element.matches && element.matches("[data-at]:not([data-do])");

  function answerOf(field, known) {
    const box = place(`${field.id}-known`);
    let how = known || (box ? box.value : "seen");
    if (!known && how === "unknown") {
      how = "seen";
    }
    return {
      do: "say",
      at: JSON.parse(field.dataset.at),
      text: field.value,
      known: how,
      from: field.id,
    };
  }

  function enqueue(edit) {
    waiting.push(edit);
    pump();
  }

  let typing = null;
  let looking = null;

  function typed(event) {
    const field = event.target;
    if (!isAnswer(field) || field.localName !== "input") {
      return;
    }
    field.dataset.draft = "true";
    clearTimeout(typing);
    typing = setTimeout(() => look(field), TYPING_PAUSE_MS);
  }

  // Asks whether what has been typed so far could be taken; changes nothing.
  async function look(field) {
    if (looking) {
      looking.abort();
    }
    looking = new AbortController();
    const edit = answerOf(field);
    try {
      const body = { document: current(), edit: edit, trial: true };
      const answer = await ask("change", body, looking.signal);
      if (field.isConnected && field.dataset.draft && field.value === edit.text) {
        mark(field, answer.faults || []);
      }
    } catch (_error) {
      // a newer look took its place, or the program is gone: the answer itself will say so
    }
  }

  function settleDrafts(edit) {
    const field = fieldOf(edit);
    if (field && field.value === edit.text) {
      delete field.dataset.draft;
    }
  }

  function changed(event) {
    const element = event.target;
    clearTimeout(typing);
    if (element.dataset.knownOf) {
      enqueue(answerOf(place(element.dataset.knownOf), element.value));
    } else if (element.dataset.do) {
      const at = JSON.parse(element.dataset.at);
      const text = element.type === "checkbox" ? element.dataset.text : element.value;
      enqueue({ do: element.dataset.do, at: at, text: text, from: element.id });
    } else if (isAnswer(element)) {
      element.dataset.draft = "true";
      enqueue(answerOf(element));
    }
  }

  const OPENS = { "add room": "rooms", "add option": "options" };

  function pressed(event) {
    const target = event.target.closest("button[data-do], button[data-goto]");
    if (!target) {
      return;
    }
    if (target.dataset.goto) {
      goTo(target.dataset.goto);
      return;
    }
    const deed = target.dataset.do;
    if (deed === "take bills") {
      const box = place(PASTE);
      enqueue({ do: deed, at: [], text: box.value, from: box.id, clears: box.id });
      return;
    }
    if (deed === "choose bills") {
      choose(".csv,.tsv,.txt,.xml", takeBills);
      return;
    }
    const at = JSON.parse(target.dataset.at);
    enqueue({ do: deed, at: at, text: target.dataset.text || "", opens: OPENS[deed] });
  }

  function goTo(id) {
    const field = place(id);
    for (let line = field && field.closest("details"); line; line = line.parentElement.closest("details")) {
      line.open = true;
    }
    if (field) {
      field.scrollIntoView({ block: "center" });
      field.focus();
    }
  }

  // ------------------------------------------------------------ files

  function choose(accept, act) {
    const chooser = document.createElement("input");
    chooser.type = "file";
    chooser.accept = accept;
    chooser.addEventListener("change", () => chooser.files[0] && act(chooser.files[0]));
    chooser.click();
  }

  async function openFile(file) {
    if (file.size > LARGEST_FILE) {
      say([`${file.name} is too large for a case: the limit is 200,000 bytes.`]);
      return;
    }
    try {
      const bytes = await file.arrayBuffer();
      const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
      enqueue({ file: { name: file.name, text: text } });
    } catch (_error) {
      say([`${file.name}: must be text in UTF-8.`]);
    }
  }

  async function takeBills(file) {
    if (file.size > LARGEST_BILLS) {
      say([`${file.name} is too large for bills on this page: the limit is 1,500,000 bytes.`]);
      return;
    }
    const bytes = await file.arrayBuffer();
    let text = "";
    try {
      text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    } catch (_error) {
      text = new TextDecoder("windows-1252").decode(bytes);
    }
    enqueue({ do: "take bills", at: [], text: text, from: PASTE });
  }

  function download(blob, name) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  }

  // ------------------------------------------------------------ papers

  async function makePaper(button) {
    const said = (words) => setProps("papers-said", { children: words });
    const choice = place("choice").value;
    button.disabled = true;
    said("Making it …");
    try {
      const answer = await fetch(`papers/${button.id.replace("paper-", "")}`, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ document: current(), option: choice }),
      });
      if ((answer.headers.get("Content-Type") || "").includes("json")) {
        said((await answer.json()).faults.join(" "));
      } else {
        const file = /filename="([^"]+)"/.exec(answer.headers.get("Content-Disposition") || "");
        if (!answer.ok || !file) {
          throw new Error("no file came");
        }
        download(await answer.blob(), file[1]);
        said(`Saved as ${file[1]}.`);
      }
    } catch (_error) {
      said(UNREACHED);
    }
    button.disabled = false;
  }

  // ------------------------------------------------------------ whose page it is

  const VIEWS = ["family", "adviser", "contractor"];

  function viewOf(address) {
    const wished = new URL(address, window.location.href).searchParams.get("view");
    return VIEWS.includes(wished) ? wished : "adviser";
  }

  function showView(view) {
    document.documentElement.dataset.view = view;
    VIEWS.forEach((one) => {
      const link = place(`view-${one}`);
      if (one === view) {
        link.setAttribute("aria-current", "page");
      } else {
        link.removeAttribute("aria-current");
      }
    });
    if (view === "family" && isOpen()) {
      closeForm();
    }
    setProps("view", { data: view });
  }

  // ------------------------------------------------------------ opening and closing

  function isOpen() {
    return !place("visit").hidden;
  }

  function openForm() {
    place("visit").hidden = false;
    document.documentElement.classList.add("visit-open");
    place("open-facts").setAttribute("aria-expanded", "true");
    cover();
    if (history && drawn !== current()) {
      ask("form", { document: current() }).then(
        (answer) => (answer.form ? drawForm(answer.form) : say(answer.faults || [])),
        () => say([UNREACHED])
      );
    }
    place("visit-name").focus();
  }

  function closeForm() {
    place("visit").hidden = true;
    document.documentElement.classList.remove("visit-open");
    place("open-facts").setAttribute("aria-expanded", "false");
    cover();
    place("open-facts").focus();
  }

  // On a narrow screen the form lies over the page: what is under it takes no keys and no touch.
  function cover() {
    const covered = isOpen() && !window.matchMedia(WIDE).matches;
    place("visit").setAttribute("role", covered ? "dialog" : "complementary");
    if (covered) {
      place("visit").setAttribute("aria-modal", "true");
    } else {
      place("visit").removeAttribute("aria-modal");
    }
    document.querySelectorAll("main, footer").forEach((part) => {
      part.inert = covered;
    });
  }

  const ACTS = {
    "open-facts": () => (isOpen() ? closeForm() : openForm()),
    "close-facts": closeForm,
    undo: () => enqueue({ step: -1 }),
    redo: () => enqueue({ step: 1 }),
    reopen: () => enqueue({ document: openedDocument }),
    "new-home": () => enqueue({ do: "begin anew", at: [] }),
    "save-case": () => enqueue({ save: true }), // after every answer that is still on its way
    "open-case": () => choose(".toml", openFile),
  };

  document.addEventListener("click", (event) => {
    const link = event.target.closest(".views a");
    const plain = !(event.ctrlKey || event.metaKey || event.shiftKey);
    if (link && plain) {
      event.preventDefault();
      window.history.replaceState(null, "", link.href);
      showView(viewOf(link.href));
      return;
    }
    const paper = event.target.closest("#papers button");
    if (paper && history) {
      makePaper(paper);
      return;
    }
    const act = event.target.closest("button") && ACTS[event.target.closest("button").id];
    if (act) {
      act();
    } else if (event.target.closest("#visit-form")) {
      pressed(event);
    }
  });
  document.addEventListener("input", (event) => event.target.closest("#visit-form") && typed(event));
  document.addEventListener(
    "change",
    (event) => event.target.closest("#visit-form") && changed(event)
  );
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && place("visit") && isOpen()) {
      closeForm();
    }
  });
  window.matchMedia(WIDE).addEventListener("change", () => place("visit") && cover());

  window.dash_clientside.page.begin = begin;
  window.dash_clientside.page.rangesThere = rangesThere;
})();
