/** Two places pointed out on a picture, each seen enlarged beside it: what is told apart there is what the scale is worth. */
import { type PointerEvent, useRef } from "react";
import type { Point } from "../../geometry/types.ts";
import type { Underlay } from "../../rules/site/site.ts";

export type CalibratedPicture = Pick<Underlay, "picture" | "width" | "height">;

interface PlacesProps {
  readonly picture: CalibratedPicture;
  readonly places: readonly [Point, Point];
  readonly active: 0 | 1;
  put(which: 0 | 1, at: Point): void;
  next(): void;
}

/** A press puts the active place there; it can be pulled until it is let go. */
export function PlacesOnPicture({ picture, places, active, put, next }: PlacesProps) {
  const isPulled = useRef(false);
  const pull = (event: PointerEvent<HTMLElement>) => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    const x = ((event.clientX - left) / width) * picture.width;
    const y = ((event.clientY - top) / height) * picture.height;
    put(active, onPicture(picture, [x, y]));
  };
  return (
    <div
      className="underlay-picked"
      onPointerDown={(event) => {
        isPulled.current = true;
        event.currentTarget.setPointerCapture(event.pointerId);
        pull(event);
      }}
      onPointerMove={(event) => {
        if (isPulled.current) pull(event);
      }}
      onPointerUp={() => {
        isPulled.current = false;
        if (active === 0) next();
      }}
      onPointerCancel={() => {
        isPulled.current = false;
      }}
    >
      <img src={picture.picture} alt="What is laid underneath" draggable={false} />
      {places.map(([x, y], i) => (
        <span
          key={i === 0 ? "first" : "second"}
          className={i === active ? "underlay-mark active" : "underlay-mark"}
          style={{ left: `${(x / picture.width) * 100}%`, top: `${(y / picture.height) * 100}%` }}
        >
          {i + 1}
        </span>
      ))}
    </div>
  );
}

/** Of an enlarged piece, pixels. */
const WIDTH = 116;
const HEIGHT = 92;
/** The piece shows about this share of the picture's width. */
const SHOWN = 1 / 16;

/** The neighborhood of a place, enlarged; a press in it moves the place by as little as it shows. */
export function EnlargedPlace({
  picture,
  at,
  which,
  put,
}: {
  readonly picture: CalibratedPicture;
  readonly at: Point;
  readonly which: 0 | 1;
  put(which: 0 | 1, at: Point): void;
}) {
  const scale = Math.max(1, WIDTH / (picture.width * SHOWN));
  const press = (event: PointerEvent<HTMLElement>) => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    const [dx, dy] = [event.clientX - left - WIDTH / 2, event.clientY - top - HEIGHT / 2];
    put(which, onPicture(picture, [at[0] + dx / scale, at[1] + dy / scale]));
  };
  return (
    <div className="underlay-enlarged" style={{ width: WIDTH, height: HEIGHT }} onPointerDown={press}>
      <img
        src={picture.picture}
        alt={`Place ${which + 1}, enlarged`}
        draggable={false}
        style={{
          width: picture.width * scale,
          height: picture.height * scale,
          left: WIDTH / 2 - at[0] * scale,
          top: HEIGHT / 2 - at[1] * scale,
        }}
      />
      <span className="small">{which + 1}</span>
    </div>
  );
}

/** On the picture, to a tenth of its pixels. */
function onPicture({ width, height }: CalibratedPicture, [x, y]: Point): Point {
  const within = (value: number, most: number) => Math.round(Math.min(most, Math.max(0, value)) * 10) / 10;
  return [within(x, width), within(y, height)];
}
