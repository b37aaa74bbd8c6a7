/** Text made safe for XML. */

/** Whatever XML 1.0 does not allow: control characters, unpaired surrogates, two noncharacters. */
const NOT_XML = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** The text for an element's content or a quoted attribute. What XML cannot hold becomes the replacement character. */
export function escapeXml(text: string): string {
  return text.replace(NOT_XML, "\ufffd").replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
}
