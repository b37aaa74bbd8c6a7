/** Gauges of wire in AWG numbers (ASTM B258): 1/0 = 0, 2/0 = -1 and on. */

/** AWG number of `8`, `"8"`, `"#6"`, `"8 AWG"`, `"1/0"`, `"00"`; of `"250 kcmil"` and larger -4; null when it says nothing readable. */
export function awgOf(given: number | string | undefined): number | null {
  if (given === undefined) return null;
  if (typeof given === "number") return given;
  const text = given
    .trim()
    .toLowerCase()
    .replace(/^(awg|no\.?|#)\s*/, "")
    .replace(/\s*(awg|ga|gauge)\.?$/, "")
    .trim();
  const aught = /^([1-9])\s*\/\s*0$/.exec(text);
  if (aught) return 1 - Number(aught[1]);
  if (/^0{1,4}$/.test(text)) return 1 - text.length;
  if (/^-?\d+(\.\d+)?$/.test(text)) return Number(text);
  const circular = /^(\d+(?:\.\d+)?)\s*(kcmil|mcm)$/.exec(text);
  // 4/0 is 211.6 kcmil: whatever is sold in kcmil is larger than that (ASTM B258, B8).
  return circular && Number(circular[1]) >= SMALLEST_KCMIL ? LARGER_THAN_4_0 : null;
}

const SMALLEST_KCMIL = 211.6;
const LARGER_THAN_4_0 = -4;

/** An AWG number as it is written: 8, 6, 1/0, 2/0. */
export function awgText(awg: number): string {
  return awg >= 1 ? `${awg} AWG` : awg > LARGER_THAN_4_0 ? `${1 - awg}/0 AWG` : "larger than 4/0 AWG";
}
