// The SVG: well formed whatever a site is called, true to scale, fetching nothing. Sources: XML 1.0 (characters, escaping),
// SVG 1.1 appendix F.6 (arcs by their end points); otherwise common practice, no source.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawingSvg } from "../../../app/drawing/drawing-svg.ts";
import { planScene } from "../../../app/drawing/plan-scene.ts";
import { num, sceneToSvg } from "../../../app/drawing/svg.ts";
import { escapeXml } from "../../../app/drawing/xml.ts";
import { runs } from "../../oracles/seed.ts";
import { DRAWN, drawn, EVERY_KIND, POOL, siteOf } from "./drawn-sites.ts";

const ENTITY = /&(?!(?:amp|lt|gt|quot|#39);)/;
const TOKEN = /<\?[^>]*\?>|<\/([A-Za-z]+)>|<([A-Za-z]+)((?:\s+[A-Za-z-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/y;

/** What is wrong with a text as XML: each tag closed in order, attributes quoted and unrepeated, no stray sign. */
function xmlFaults(text: string): string[] {
  const open: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex;
    const found = TOKEN.exec(text);
    if (!found) return [`not XML at ${at}: ${text.slice(at, at + 60)}`];
    const [whole, closed, opened, attributes = "", isEmpty, plain] = found;
    if (closed !== undefined && open.pop() !== closed) return [`</${closed}> closes nothing at ${at}`];
    if (opened !== undefined) {
      const names = [...attributes.matchAll(/([A-Za-z-]+)="/g)].map(([, name]) => name);
      if (new Set(names).size < names.length) return [`an attribute twice: ${whole}`];
      if (isEmpty === "") open.push(opened);
    }
    if (ENTITY.test(plain ?? attributes)) return [`a stray & at ${at}: ${whole}`];
  }
  return open.map((name) => `<${name}> is never closed`);
}

describe("the check for XML", () => {
  it.each([
    ["<a><b></a></b>", /closes nothing/],
    ["<a x=1/>", /not XML/],
    ["<a>&nbsp;</a>", /stray/],
    ["<a>", /never closed/],
    ['<a x="1" x="2"/>', /twice/],
  ])("finds what is wrong with %s", (text, fault) => {
    expect(xmlFaults(text)[0]).toMatch(fault);
  });
});

describe("a drawing", () => {
  it("of every demo site is XML that fetches and runs nothing", () => {
    for (const { site, report } of DRAWN) {
      const svg = drawingSvg(site, report);
      expect(xmlFaults(svg)).toEqual([]);
      expect(svg.replace('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(
        /https?:|href|<script|<image|@import|NaN/,
      );
    }
  });

  it("is the same for the same site and report", () => {
    const { site, report } = drawn("true-l");
    expect(drawingSvg(site, report)).toBe(drawingSvg(site, report));
  });

  it("stays XML whatever its names hold", () => {
    const bad = `</text><script>alert("1")</script> & 'x' \u0000\u0007 \ud800 ]]>`;
    const named = EVERY_KIND.map((element) => ({ ...element, name: bad }));
    const { site, report } = siteOf(named, { name: bad });
    const svg = drawingSvg(site, report);
    expect(xmlFaults(svg)).toEqual([]);
    expect(svg).not.toContain("<script");
    expect(svg.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\p{Cs}]/u);
  });

  it("says that it is invented only where the site does", () => {
    const invented = siteOf([POOL], { invented: true });
    const real = siteOf([POOL]);
    expect(drawingSvg(invented.site, invented.report)).toContain("Invented example; not for construction");
    expect(drawingSvg(real.site, real.report)).not.toContain("Invented");
  });

  it("carries the cautions", () => {
    const { site, report } = siteOf([]);
    const text = drawingSvg(site, report).replace(/<[^>]*>/g, " ");
    for (const word of ["drawing aid, not an approval", "authority having jurisdiction"]) expect(text).toContain(word);
  });
});

/** The characters that XML 1.0 allows, production 2. */
function isXml(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || code >= 0x10000;
}

describe("escaping", () => {
  it("gives the text back when it is read (XML 1.0)", () => {
    const entities: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const written = escapeXml(text);
        expect(written).not.toMatch(/[<>"']/);
        const kept = [...text].map((one) => (isXml(one.codePointAt(0) ?? 0) ? one : "\ufffd")).join("");
        expect(written.replace(/&([a-z]+|#39);/g, (_, name: string) => entities[name] ?? "?")).toBe(kept);
      }),
      runs(100),
    );
  });

  it("writes no number that is none", () => {
    expect(() => num(Number.NaN)).toThrow(/NaN/);
    expect(num(-0.0001)).toBe("0");
  });
});

/** Every end point and arc middle of a path's data, by the SVG specification's own way from end points to centers. */
function pathPoints(d: string): [number, number][] {
  const points: [number, number][] = [];
  for (const [, letter, rest = ""] of d.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const n = rest.trim().split(/\s+/).map(Number);
    if (letter === "M" || letter === "L") points.push([n[0] ?? 0, n[1] ?? 0]);
    if (letter !== "A") continue;
    const [r = 0, , , large, sweep, x = 0, y = 0] = n;
    const [px, py] = points[points.length - 1] ?? [0, 0];
    const [hx, hy] = [(px - x) / 2, (py - y) / 2];
    const root = Math.sqrt(Math.max(0, r * r - hx * hx - hy * hy) / (hx * hx + hy * hy)) * (large === sweep ? -1 : 1);
    const center = [(px + x) / 2 + root * hy, (py + y) / 2 - root * hx] as const;
    const start = Math.atan2(py - center[1], px - center[0]);
    let turn = Math.atan2(y - center[1], x - center[0]) - start;
    if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
    if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
    points.push([center[0] + r * Math.cos(start + turn / 2), center[1] + r * Math.sin(start + turn / 2)], [x, y]);
  }
  return points;
}

function wallOf(svg: string): [number, number][] {
  const paths = [...svg.matchAll(/<path d="([^"]+)" fill="none"[^>]*data-element="p"/g)].map(([, d = ""]) => d);
  const [wall] = paths.filter((d) => d.includes("A"));
  return pathPoints(wall ?? "");
}

describe("the scale", () => {
  const { site, report } = siteOf([POOL]);

  it("is true: the inside wall measures what it measures, its arc bows out (arithmetic)", () => {
    const k = 1.5;
    const wall = wallOf(sceneToSvg(planScene(site, report, { pointsPerInch: k }), { title: "plan" }));
    const [a, b, c, top, d] = wall;
    if (!a || !b || !c || !top || !d) throw new Error("The inside wall is not drawn.");
    expect(b[0] - a[0]).toBeCloseTo(240 * k, 2);
    expect(b[1] - c[1]).toBeCloseTo(120 * k, 2);
    // The half circle over the upper edge, radius 120 in.: its middle lies 120 in. farther up the page.
    expect(top[0]).toBeCloseTo((c[0] + d[0]) / 2, 2);
    expect(c[1] - top[1]).toBeCloseTo(120 * k, 2);
  });

  it("of a sheet is the one that its title block tells", () => {
    const svg = drawingSvg(site, report);

    const [, top = "", bottom = "1"] = /Scale (\d+)\/?(\d+)?&quot; = 1&#39;/.exec(svg) ?? [];
    expect(top).not.toBe("");
    const pointsPerInch = ((Number(top) / Number(bottom)) * 72) / 12;
    const wall = wallOf(svg);
    expect((wall[1]?.[0] ?? 0) - (wall[0]?.[0] ?? 0)).toBeCloseTo(240 * pointsPerInch, 2);
    const [, width = "", , box = ""] = /width="([\d.]+)in" height="([\d.]+)in" viewBox="0 0 ([\d.]+)/.exec(svg) ?? [];
    expect(Number(width) * 72).toBeCloseTo(Number(box), 2);
  });
});
