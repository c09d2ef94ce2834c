// A number as the handbook shows it, with the same rounding to the safe side as the core.

const MOST_DIGITS = 12;

function even(number) {
  const below = Math.floor(number), rest = number - below;
  return rest > 0.5 || (rest === 0.5 && below % 2 !== 0) ? below + 1 : below;
}

// The figures of a number, one by one, and the power of ten of the first.
function figures(number) {
  const parts = Math.abs(number).toExponential().split("e");
  return { minus: number < 0, list: parts[0].replace(".", "").split("").map(Number), power: Number(parts[1]) };
}
// So many figures; `side` -1 rounds down, 1 up, 0 to the nearest, a half to the even one.
function cut(own, digits, side) {
  const list = own.list.slice(0, digits), rest = own.list.slice(digits);
  while (list.length < digits) {
    list.push(0);
  }
  const any = rest.some((figure) => figure > 0), half = rest[0] === 5 && !rest.slice(1).some((figure) => figure > 0);
  let further = side === 0 ? rest[0] > 5 || (rest[0] === 5 && !half) || (half && list[digits - 1] % 2 === 1)
    : any && (side > 0) !== own.minus;
  let power = own.power;
  for (let at = digits - 1; further && at >= 0; at -= 1) {
    list[at] = (list[at] + 1) % 10;
    further = list[at] === 0;
  }
  if (further) {
    list.unshift(1);
    list.pop();
    power += 1;
  }
  return { minus: own.minus, list: list, power: power };
}
function point(list, places) {
  const text = list.join("");
  return places > 0 ? text.slice(0, text.length - places) + "." + text.slice(text.length - places) : text;
}
function rounded(number, digits, side) {
  if (number === 0) {
    return "0";
  }
  let own = figures(number);
  if (side) {
    own = cut(own, MOST_DIGITS, 0); // the last figures of a float are no reason
  }
  own = cut(own, digits, side);
  const sign = own.minus ? "-" : "";
  if (own.power <= -5 || own.power >= 7) {
    return sign + point(own.list, digits - 1) + "e" + own.power;
  }
  const list = own.list.slice();
  for (let at = own.power; at < 0; at += 1) {
    list.unshift(0);
  }
  while (list.length < own.power + 1) {
    list.push(0);
  }
  return sign + point(list, Math.max(0, digits - 1 - own.power));
}

function shown(number, digits, unit, whole, side) {
  let text;
  if (whole && Math.abs(number) < 1e15) {
    const own = side === -1 ? down(number) : side === 1 ? Math.ceil(number - Math.abs(number) * HAIR) : even(number);
    text = String(own === 0 ? 0 : own);
  } else {
    text = rounded(number, digits, side || 0);
  }
  return unit ? text + " " + unit : text;
}
function inUnit(si, unit) {
  return unit ? (si - unit[2]) / unit[1] : si;
}
function name(unit) {
  return unit ? unit[0] : "";
}

function showResult(one, said) {
  const digits = one.digits === undefined ? 3 : one.digits, unit = one.unit;
  const text = one.text && said.value === one.si ? one.text : shown(inUnit(said.value, unit), digits, name(unit), one.whole);
  return { text: text, range: showRange(one, said, Math.max(digits, 3)) };
}
function showRange(one, said, digits) {
  if (!said.ranged) {
    return "worst range not followed here";
  }
  if (said.low === null) {
    return "range unknown";
  }
  if (said.low === said.high) {
    return "";
  }
  const low = inUnit(said.low, one.unit), high = inUnit(said.high, one.unit);
  const whole = one.whole || (!name(one.unit) && low === even(low) && high === even(high));
  return shown(low, digits, "", whole, -1) + " to " + shown(high, digits, name(one.unit), whole, 1) + " at worst";
}

// Both sides with as many digits as it takes to tell them apart.
function showSides(one, said) {
  const unit = one.unit, whole = one.whole || [false, false];
  const same = Math.abs(said.left - said.right) <= least(said.left, said.right);
  let texts = ["", ""];
  for (let digits = one.digits === undefined ? 3 : one.digits; digits <= MOST_DIGITS; digits += 1) {
    texts = [said.left, said.right].map((si, at) => shown(inUnit(si, unit), digits, name(unit), whole[at] && !name(unit)));
    if (same || texts[0] !== texts[1]) {
      break;
    }
  }
  return texts;
}
// A margin in per cent, never better than it is.
function percentDown(share) {
  if (Math.abs(share) >= 100000) {
    return share > 0 ? "over 100000 %" : "under -100000 %";
  }
  const tidy = even(share * 1e6) / 1e6;
  return (Math.abs(tidy) >= 1 ? Math.floor(tidy) : Math.floor(tidy * 10) / 10) + " %";
}
function showVerdict(one, said) {
  if (!said.ranged) {
    return (said.here ? "Holds at these values" : "Fails") + "; the worst corner is not followed here.";
  }
  const digits = one.digits === undefined ? 3 : one.digits, apart = one.margin || ["", 1];
  const both = !!one.whole && one.whole[0] && one.whole[1];
  const text = said.margin === null ? "range unknown" : shown(said.margin / apart[1], digits, apart[0], both);
  const share = said.percent === null ? "" : " (" + percentDown(said.percent) + " of the limit)";
  const words = said.verdict.charAt(0).toUpperCase() + said.verdict.slice(1);
  return words + ". Margin at the worst corner: " + text + share + ".";
}
