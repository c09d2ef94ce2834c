// The form under a calculation: a reader changes an opened input, and its results follow, without any
// network. The handbook's own numbers stay as they are.

const LOST = "not followed here";
const NONE = "not computed";

function line(parent, kind, text, called) {
  const made = document.createElement(kind);
  made.textContent = text || "";
  if (called) {
    made.className = called;
  }
  parent.appendChild(made);
  return made;
}
function put(part, text) {
  if (part.textContent !== text) {
    part.textContent = text;
  }
}
function together(text) {
  return text.replace(/(\d) (?=\D)/g, "$1\u00a0");
}
// A number for a field: plain, without the last figures of a float.
function tidy(number) {
  return String(Number(number.toPrecision(12)));
}

function field(box, input, id, card) {
  const part = line(box, "div", "", "field"), label = line(part, "label", input.label || input.name);
  if (!card && input.label) {
    line(label, "span", " (" + input.name + ")", "name");
  }
  const entry = line(part, "div", "", "entry"), slider = input.slider;
  const less = slider && line(entry, "button", "\u2212"), frame = line(entry, "div", "", "frame");
  const typed = line(frame, "input"), unit = line(frame, "span", input.unit[0], "unit");
  const more = slider && line(entry, "button", "+"), beside = line(part, "p", "", "quiet");
  const wide = slider && line(part, "input", "", "slider"), fault = line(part, "p", "", "fault");
  typed.id = label.htmlFor = id;
  label.id = id + "-label";
  unit.id = id + "-unit";
  beside.id = id + "-beside";
  fault.id = id + "-fault";
  fault.setAttribute("role", "alert");
  typed.type = "text";
  typed.inputMode = "decimal";
  typed.autocomplete = "off";
  typed.spellcheck = false;
  typed.setAttribute("aria-describedby", [unit.id, beside.id, fault.id].join(" "));
  beside.textContent = input.tolerance ? "counted with \u00b1 " + together(input.tolerance) : "";
  if (slider) {
    less.type = more.type = "button";
    less.setAttribute("aria-label", "Less: " + label.textContent);
    more.setAttribute("aria-label", "More: " + label.textContent);
    wide.type = "range";
    [wide.min, wide.max, wide.step] = slider.map(String);
    wide.setAttribute("aria-label", label.textContent + ", slider");
  }
  return { input: input, typed: typed, label: label, less: less, more: more, slider: wide, fault: fault };
}

function item(list, what, called) {
  const part = line(list, "li", "", called);
  line(part, "span", what, "what");
  return { part: part, said: line(part, "strong", "", "result"), more: line(part, "span", "", "range") };
}
function showItem(own, text, more) {
  own.part.classList.toggle("none", text === NONE || text === LOST);
  put(own.said, together(text));
  put(own.more, more ? together(more) : "");
}

// Follows one calculation; gives the means to tell what values come to, and to tell nothing.
function answers(box, made, card) {
  const alarms = line(box, "div", "", "alarms"), list = line(box, "ul", "", "followed");
  alarms.setAttribute("aria-live", "polite");
  list.setAttribute("aria-live", "polite");
  const order = made.results.map((one, at) => at), results = [];
  if (card) {
    order.sort((a, b) => weight(made, b) - weight(made, a) || a - b);
  }
  order.forEach((at, place) => {
    const one = made.results[at], named = card || !one.label ? one.label || one.name : one.label + " (" + one.name + ")";
    results[at] = item(list, named, card && place === 0 ? "big" : one.answer ? "main" : "");
  });
  const required = made.requirements.map((one) => item(list, "Requirement: " + (one.label || one.text), "required"));

  function missing(own, said) {
    if (said.lost || said.why) {
      showItem(own, said.lost ? LOST : NONE, said.why ? ": " + said.why : "");
    }
    return said.lost || said.why;
  }
  return {
    nothing: () => {
      results.concat(required).forEach((own) => showItem(own, NONE));
      required.forEach((own) => own.part.classList.remove("fails"));
      put(alarms, "");
    },
    tell: (values) => {
      const found = follow(made, values);
      found.results.forEach((said, at) => {
        if (!missing(results[at], said)) {
          const text = showResult(made.results[at], said);
          showItem(results[at], text.text, text.range && " (" + text.range + ")");
        }
      });
      found.requirements.forEach((said, at) => {
        const own = required[at], one = made.requirements[at];
        own.part.classList.toggle("fails", !said.lost && (!!said.why || said.verdict !== VERDICT.holds));
        if (!missing(own, said)) {
          showItem(own, showVerdict(one, said), one.text + ": " + showSides(one, said).join(" " + one.sign + " "));
        }
      });
      put(alarms, found.alarms.map((text) => "Alarm: " + text + ".").join(" "));
    }
  };
}

function form(data, number) {
  const made = ready(JSON.parse(data.textContent)), card = data.classList.contains("card");
  const box = document.createElement("section"), id = "what-if-" + number;
  box.className = card ? "what-if card" : "what-if";
  if (!card) {
    line(box, "h3", "What if").id = id;
  }
  const fields = made.inputs.map((input, at) => field(box, input, id + "-" + at, card));
  box.setAttribute("aria-labelledby", card ? fields[0].label.id : id);
  const bar = line(box, "div", "", "whose"), whose = line(bar, "p"), back = line(bar, "button", "Reset");
  whose.setAttribute("role", "status");
  back.type = "button";
  back.setAttribute("aria-label", "Reset to the handbook\u2019s numbers");
  const out = answers(box, made, card);
  line(box, "p", "Nothing here is kept. Other pages, and paper, show the handbook\u2019s numbers.", "quiet");

  function update() {
    const said = fields.map((own) => read(own.input, own.typed.value));
    const differs = said.some((one, at) => one.fault || one.si !== fields[at].input.si);
    fields.forEach((own, at) => {
      put(own.fault, said[at].fault || "");
      own.typed.setAttribute("aria-invalid", String(!!said[at].fault));
    });
    box.classList.toggle("changed", differs);
    put(whose, differs ? "These are not the handbook\u2019s numbers." : "These are the handbook\u2019s numbers.");
    back.hidden = !differs;
    if (said.some((one) => one.fault)) {
      out.nothing();
    } else {
      out.tell(said.map((one) => one.si));
    }
  }
  function set(own, text) {
    own.typed.value = text;
    if (own.slider) {
      own.slider.value = text;
    }
  }
  function reset() {
    fields.forEach((own) => set(own, own.input.text));
    update();
  }
  function push(own, way) {
    const said = read(own.input, own.typed.value), ends = own.input.slider;
    const from = said.fault ? Number(own.input.text) : said.number, to = from + way * ends[2];
    set(own, tidy(Math.min(Math.max(to, Math.min(from, ends[0])), Math.max(from, ends[1]))));
    update();
  }
  fields.forEach((own) => {
    own.typed.addEventListener("input", () => {
      if (own.slider && !read(own.input, own.typed.value).fault) {
        own.slider.value = own.typed.value;
      }
      update();
    });
    if (own.slider) {
      own.slider.addEventListener("input", () => {
        own.typed.value = tidy(Number(own.slider.value));
        update();
      });
      own.less.addEventListener("click", () => push(own, -1));
      own.more.addEventListener("click", () => push(own, 1));
    }
  });
  back.addEventListener("click", () => {
    reset();
    fields[0].typed.focus();
  });
  data.parentNode.insertBefore(box, data.nextSibling);
  reset();
}
// On a card what is required stands first, then what it was made for.
function weight(made, at) {
  const one = made.results[at], cell = String(one.code);
  return (made.requirements.some((each) => String(each.left) === cell) ? 2 : 0) + (one.answer ? 1 : 0);
}

let forms = 0;
function open(page) {
  page.querySelectorAll("script.what-if").forEach((data) => {
    form(data, forms);
    forms += 1;
  });
}
document.addEventListener("garboard:page", (event) => open(event.target)); // one more page of the one file
open(document);
