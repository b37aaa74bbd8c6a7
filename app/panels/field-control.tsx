/** One field of an element or of the site as a typed control: it says its unit, its default, or that it is not known. */
import { useEffect, useId, useState } from "react";
import { awgOf } from "../../rules/recorded/awg.ts";
import type { Field } from "../../rules/site/field-list.ts";
import { lengthText, type Units } from "../../rules/words/lengths.ts";
import { lengthEntry } from "../entry/length-entry.ts";
import { parseLength } from "../entry/parse-length.ts";
import { parseQuantity, type QuantityKind } from "../entry/parse-quantity.ts";
import { ElementsControl } from "./elements-control.tsx";
import { useUnreadEntry } from "./unread-entry.ts";

export interface FieldControlProps {
  readonly field: Field;
  readonly value: unknown;
  readonly units: Units;
  /** Ids that an element field may name, with their names. */
  readonly elements: readonly { readonly id: string; readonly name: string }[];
  /** Returns why the value was refused, or null. `undefined` clears the field. */
  onChange(value: unknown): string | null;
}

const QUANTITIES: Partial<Record<Field["type"], QuantityKind>> = {
  number: "number",
  count: "count",
  amps: "amps",
  volts: "volts",
  gauge: "gauge",
  area: "area",
};

/** As `1/0`, `00` or `250 kcmil`. */
const LARGE_GAUGE = /^\s*(awg|no\.?|#)?\s*0{2,4}\b|\d\s*\/\s*0|kcmil|mcm/i;

export function FieldControl(props: FieldControlProps) {
  const { field, value, units } = props;
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const keep = useUnreadEntry(field.label);
  const refuse = (reason: string | null) => {
    keep(reason);
    setProblem(reason);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the fact has become begins anew, and only that.
  useEffect(() => refuse(null), [value]);
  const change = (next: unknown) => refuse(props.onChange(next));
  const absence = absenceText(field, units);
  return (
    <div className="field">
      <label htmlFor={id}>{field.label}</label>
      <Control {...props} id={id} change={change} refuse={refuse} isWrong={problem !== null} />
      <p className="small soft" id={`${id}-help`}>
        {value === undefined && absence !== "" ? <em>{absence} </em> : null}
        {field.help}
      </p>
      {problem === null ? null : (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

/** What it means that the field is empty. */
export function absenceText(field: Field, units: Units): string {
  switch (field.absent.means) {
    case "required":
    case "none":
      return "";
    case "unknown":
      return "Not known.";
    case "default": {
      const { value } = field.absent;
      if (typeof value === "boolean") return `Taken as ${value ? "yes" : "no"}.`;
      if (typeof value === "number" && (field.type === "length" || field.type === "level"))
        return `Taken as ${lengthText(value, units)}.`;
      return Array.isArray(value)
        ? `Taken as ${value.map((one: number) => lengthText(one, units)).join(", ")}.`
        : `Taken as ${String(value)}.`;
    }
  }
}

interface ControlProps extends FieldControlProps {
  readonly id: string;
  readonly isWrong: boolean;
  change(value: unknown): void;
  refuse(problem: string | null): void;
}

function Control(props: ControlProps) {
  const { field, value, id, change, elements } = props;
  const described = { id, "aria-describedby": `${id}-help` };
  switch (field.type) {
    case "flag":
      return (
        <select
          {...described}
          value={value === undefined ? "" : String(value)}
          onChange={(event) => change(event.target.value === "" ? undefined : event.target.value === "true")}
        >
          <option value="">{emptyOption(field)}</option>
          <option value="true">yes</option>
          <option value="false">no</option>
        </select>
      );
    case "choice":
      return (
        <select
          {...described}
          value={typeof value === "string" ? value : ""}
          onChange={(event) => change(event.target.value === "" ? undefined : event.target.value)}
        >
          {field.required ? null : <option value="">{emptyOption(field)}</option>}
          {field.options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      );
    case "element":
      return (
        <select
          {...described}
          value={typeof value === "string" ? value : ""}
          onChange={(event) => change(event.target.value === "" ? undefined : event.target.value)}
        >
          <option value="">{emptyOption(field)}</option>
          {elements.map((element) => (
            <option key={element.id} value={element.id}>
              {element.name}
            </option>
          ))}
        </select>
      );
    case "elements":
      return (
        <ElementsControl
          id={id}
          value={value}
          isRequired={field.required}
          elements={elements}
          others={field.suggestions}
          onChange={change}
        />
      );
    default:
      return <TextControl {...props} />;
  }
}

function emptyOption(field: Field): string {
  return field.absent.means === "default" ? "as by default" : field.absent.means === "unknown" ? "not known" : "none";
}

/** Everything that is typed: read when the field is left or Enter is pressed, put back by Escape. */
function TextControl({ field, value, units, id, isWrong, change, refuse }: ControlProps) {
  const written = write(field, value, units);
  const [text, setText] = useState(written);
  useEffect(() => setText(written), [written]);
  const commit = () => {
    if (text === written) return refuse(null);
    if (text.trim() === "") return change(undefined);
    const read = readTyped(field, text, units);
    if (read.ok) change(read.value);
    else refuse(read.reason);
  };
  return (
    <>
      <input
        id={id}
        aria-describedby={`${id}-help`}
        aria-invalid={isWrong}
        value={text}
        autoComplete="off"
        list={field.suggestions.length > 0 ? `${id}-suggestions` : undefined}
        placeholder={field.absent.means === "unknown" ? "not known" : ""}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
          if (event.key === "Escape") {
            setText(written);
            refuse(null);
          }
        }}
      />
      {field.suggestions.length > 0 ? (
        <datalist id={`${id}-suggestions`}>
          {field.suggestions.map((suggestion) => (
            <option key={suggestion} value={suggestion} />
          ))}
        </datalist>
      ) : null}
    </>
  );
}

type Read = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly reason: string };

/** A field's value as a person would type it. */
export function write(field: Field, value: unknown, units: Units): string {
  if (value === undefined || value === null) return "";
  const length = (inches: unknown) => (typeof inches === "number" ? lengthEntry(inches, units) : "");
  switch (field.type) {
    case "length":
    case "level":
      return length(value);
    case "level-range":
    case "level-or-range":
      return Array.isArray(value) ? value.map(length).join(" to ") : length(value);
    case "lengths":
      return Array.isArray(value) ? value.map(length).join(", ") : "";
    default:
      return String(value);
  }
}

/** Reads what a person typed into a field. */
export function readTyped(field: Field, text: string, units: Units): Read {
  const isLevel = field.type === "level" || field.type === "level-range" || field.type === "level-or-range";
  const one = (part: string): Read => {
    const read = parseLength(part, units, isLevel ? { mayBeNegative: true } : {});
    return read.ok ? { ok: true, value: read.inches } : read;
  };
  switch (field.type) {
    case "length":
    case "level":
      return one(text);
    case "level-range":
    case "level-or-range":
      return readRange(field, text, one);
    case "lengths":
      return all(text.split(","), one);
    case "text":
      return { ok: true, value: text };
    default: {
      const kind = QUANTITIES[field.type];
      if (!kind) return { ok: true, value: text };
      // Gauges from 1/0 up are no numbers.
      if (kind === "gauge" && LARGE_GAUGE.test(text) && awgOf(text) !== null) return { ok: true, value: text.trim() };
      const read = parseQuantity(text, kind, { least: field.least, most: field.most });
      return read.ok ? { ok: true, value: read.value } : read;
    }
  }
}

function readRange(field: Field, text: string, one: (part: string) => Read): Read {
  const parts = text.split(/\s+to\s+/);
  if (parts.length === 2) return all(parts, one);
  if (field.type === "level-or-range") return one(text);
  return { ok: false, reason: `Write the bottom and the top, as 0" to 6'.` };
}

function all(parts: readonly string[], one: (part: string) => Read): Read {
  const values: unknown[] = [];
  for (const part of parts) {
    const read = one(part);
    if (!read.ok) return read;
    values.push(read.value);
  }
  return { ok: true, value: values };
}
