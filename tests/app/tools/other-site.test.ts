/** What a tool had in hand when the document changed beneath it or another site was opened. Expectations are arithmetic. */
import { describe, expect, it } from "vitest";
import { setSiteField } from "../../../app/edits/set-site-field.ts";
import type { Report, TieReport } from "../../../rules/report.ts";
import { type Hand, handAt, siteWith } from "./hand.ts";

const FILE = { name: "", saved: null };
const fence = (y: number) => ({
  id: "fence-1",
  kind: "fence",
  path: {
    vertices: [
      [0, y],
      [300, y],
    ],
    closed: false,
  },
});
const TIE: TieReport = {
  at: [300, 0],
  to: [321, 0],
  between: ["perimeter", "pool-1"],
  present: false,
  recorded: null,
  distanceAlong: 0,
};

function handWithTie(): Hand {
  const hand = handAt(siteWith([fence(-200)]));
  hand.report = { ties: [TIE] } as unknown as Report;
  hand.click(320, 2);
  expect(hand.host.state.getState().offeredTie).toBe(TIE);
  return hand;
}

describe("an offered tie", () => {
  it("is withdrawn by any change: where it was to go may have moved", () => {
    const hand = handWithTie();
    hand.document.getState().edit(setSiteField("name", "Changed"));
    expect(hand.host.state.getState().offeredTie).toBeNull();
  });

  it("is withdrawn when another site is opened", () => {
    const hand = handWithTie();
    hand.document.getState().open(siteWith([fence(-200)]), FILE);
    expect(hand.host.state.getState().offeredTie).toBeNull();
  });
});

describe("another site that is opened under a hand", () => {
  it("is not pulled by a corner that was pressed on the one before", () => {
    const hand = handAt(siteWith([fence(-200)]));
    hand.view.getState().select(["fence-1"]);
    hand.move(300, -200);
    hand.down(300, -200);
    const other = siteWith([fence(-100)]);
    hand.document.getState().open(other, FILE);
    hand.move(380, -260);
    hand.up(380, -260);
    expect(hand.document.getState().history.present).toBe(other);
  });

  it("gets nothing of a drawing that was begun on the one before", () => {
    const hand = handAt(siteWith([]));
    hand.take("fence");
    hand.click(0, 0);
    hand.click(96, 0);
    const other = siteWith([]);
    hand.document.getState().open(other, FILE);
    hand.click(204, 0);
    hand.click(204, 96);
    hand.key("Enter");
    const [drawn] = hand.document.getState().history.present.elements;
    expect(drawn).toMatchObject({
      path: {
        vertices: [
          [204, 0],
          [204, 96],
        ],
      },
    });
  });
});
