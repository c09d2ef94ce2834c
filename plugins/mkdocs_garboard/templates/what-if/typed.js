// A number as a reader types it.

const MOST_TYPED = 15;

// Rounded once where the unit is a power of ten, as the core does it: 57 % is 0.57 and no hair more.
function inSI(text, unit) {
  const parts = text.toLowerCase().split("e"), ten = Math.round(Math.log10(unit[1]));
  const exact = Number("1e" + ten) === unit[1];
  const number = exact ? Number(parts[0] + "e" + (Number(parts[1] || 0) + ten)) : Number(text) * unit[1];
  if (!unit[2]) {
    return number;
  }
  const places = [text, String(unit[2])].map((part) => (part.split(".")[1] || "").length);
  return exact && parts.length === 1 ? Number((number + unit[2]).toFixed(Math.max(places[0], places[1]))) : number + unit[2];
}

// The value in SI, or what is wrong with what stands in the field.
function read(input, typed) {
  const text = typed.trim().replace(/\u2212/g, "-"), unit = input.unit;
  const beside = unit[0] ? "; the unit is " + unit[0] : "";
  if (!text) {
    return { fault: "Write a number" + beside + "." };
  }
  if (/^[\s\d.,+-]*,[\s\d.,+-]*$/.test(text)) {
    const once = text.replace(",", "."), such = /^[+-]?\d*\.\d+$/.test(once) ? "write " + once + ", with a point" : "write a point before decimals";
    return { fault: text + " has a comma in it: " + such + ", and nothing between thousands." };
  }
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?(\d|1[0-2]))?$/i.test(text) || text.replace(/\D/g, "").length > MOST_TYPED) {
    return { fault: text.slice(0, 30) + " is no number: write figures alone, such as " + input.text + beside + "." };
  }
  const number = Number(text), si = number === Number(input.text) ? input.si : inSI(text, unit);
  if (!Number.isFinite(si)) {
    return { fault: text + " is too large." };
  }
  if (input.whole && !Number.isInteger(number)) {
    return { fault: text + " is no whole number, and this is counted." };
  }
  if (typeof input.lowest === "number" && si < input.lowest) {
    return { fault: text + " is out of range: the lowest is " + input.least + "." };
  }
  if (typeof input.highest === "number" && si > input.highest) {
    return { fault: text + " is out of range: the highest is " + input.most + "." };
  }
  return { si: si, number: number };
}

window.garboardWhatIf = {
  ready: ready, follow: follow, read: read, shown: shown,
  showResult: showResult, showSides: showSides, showVerdict: showVerdict, VERDICT: VERDICT
};
