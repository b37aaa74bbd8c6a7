/** Lengths as people read them: feet and inches with fractions, decimal feet, inches or meters. */

export type Units = "ft-in" | "ft" | "in" | "m";

const INCHES_PER_METER = 1 / 0.0254;

/**
 * A length in words, e.g. `3' 11"`, `16' 6 1/2"`, `5.03 m`.
 * `apartFrom`: a limit that the text must not seem to equal when the value does not: more digits are given until it differs.
 */
export function lengthText(inches: number, units: Units = "ft-in", apartFrom?: number): string {
  if (apartFrom === undefined) return knownText(inches, units);
  const plain = write(inches, units, 0);
  if (inches === apartFrom || plain !== knownText(apartFrom, units)) return plain;
  for (let digits = 1; digits <= 8; digits++) {
    const finer = write(inches, units, digits);
    if (finer !== write(apartFrom, units, digits)) return finer;
  }
  return plain;
}

/** The limits of the code, which are written for one element after the other: their texts in the units used last. */
const known = { units: "ft-in" as Units, texts: new Map<number, string>() };
const MANY_TEXTS = 200;

function knownText(inches: number, units: Units): string {
  if (known.units !== units || known.texts.size > MANY_TEXTS) {
    known.units = units;
    known.texts.clear();
  }
  let text = known.texts.get(inches);
  if (text === undefined) {
    text = write(inches, units, 0);
    known.texts.set(inches, text);
  }
  return text;
}

function write(inches: number, units: Units, extra: number): string {
  switch (units) {
    case "m":
      return `${(inches / INCHES_PER_METER).toFixed(2 + extra)} m`;
    case "ft":
      return `${(inches / 12).toFixed(2 + extra)} ft`;
    case "in":
      return `${trimmed(inches, 2 + extra)}"`;
    case "ft-in":
      return extra === 0 ? feetAndInches(inches) : finerFeetAndInches(inches, extra);
  }
}

/** Feet and inches to the nearest sixteenth. */
export function feetAndInches(inches: number): string {
  const sign = inches < 0 ? "-" : "";
  const sixteenths = Math.round(Math.abs(inches) * 16);
  const feet = Math.floor(sixteenths / 192);
  const rest = sixteenths - feet * 192;
  const whole = Math.floor(rest / 16);
  const fraction = fractionText(rest - whole * 16);
  const inchText = fraction === "" ? `${whole}"` : whole === 0 ? `${fraction}"` : `${whole} ${fraction}"`;
  return feet === 0 ? `${sixteenths === 0 ? "" : sign}${inchText}` : `${sign}${feet}' ${inchText}`;
}

function fractionText(sixteenths: number): string {
  if (sixteenths === 0) return "";
  let top = sixteenths;
  let bottom = 16;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return `${top}/${bottom}`;
}

function finerFeetAndInches(inches: number, extra: number): string {
  const sign = inches < 0 ? "-" : "";
  const size = Math.abs(inches);
  let feet = Math.floor(size / 12);
  let rest = (size - feet * 12).toFixed(1 + extra);
  if (Number(rest) >= 12) {
    feet += 1;
    rest = (0).toFixed(1 + extra);
  }
  return feet === 0 ? `${sign}${rest}"` : `${sign}${feet}' ${rest}"`;
}

function trimmed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return text.includes(".") ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
}

/** A length of copper, to the inch (to the centimeter): nobody lays or buys a sixteenth. */
export function copperText(inches: number, units: Units = "ft-in"): string {
  return lengthText(units === "m" ? inches : Math.round(inches), units);
}

/** An area in square feet, or square meters. */
export function areaText(squareInches: number, units: Units = "ft-in"): string {
  return units === "m"
    ? `${(squareInches * 0.0254 * 0.0254).toFixed(1)} m\u00b2`
    : `${(squareInches / 144).toFixed(1)} sq ft`;
}
