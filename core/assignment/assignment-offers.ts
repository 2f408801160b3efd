import type { Limb, Side } from "../ground/limb.ts";
import type { RecognisedTest } from "../ground/recognised-test.ts";
import { mayBeVariant, type TestKind, testKinds } from "../ground/test-kind.ts";
import type { FileReading } from "../recording/file-reading.ts";
import type { HeaderHint, HeaderHintKind } from "../recording/header-hint.ts";
import { type NameOffers, nameOffers } from "./name-offers.ts";

/** Something a recording may be, with where that comes from: "file name", "header, line 3", "trace". */
export interface Offer<Value> {
  readonly value: Value;
  readonly from: string;
}

/** Everything that is offered about one trial; each value once, the stronger source first. Nothing of it is imposed. */
export interface AssignmentOffers {
  readonly test: readonly Offer<TestKind>[];
  readonly limb: readonly Offer<Limb>[];
  readonly dropHeightMetres: readonly Offer<number>[];
  readonly leadingLeg: readonly Offer<Side>[];
  /** Whom the header names. */
  readonly athlete: readonly Offer<string>[];
  readonly date: readonly Offer<string>[];
}

/** What offers are made from. */
export interface OfferSources {
  readonly file: string;
  /** Relative, forward slashes; "" for loose files. */
  readonly folder: string;
  readonly reading?: FileReading;
  readonly recognised?: RecognisedTest;
}

/** Gathers what header, file name, folder names and trace say, in this order. */
export function assignmentOffers({ file, folder, reading, recognised }: OfferSources): AssignmentOffers {
  const hints = reading?.kind === "delimited" ? reading.hints : [];
  const ofFile = nameOffers(file.slice(file.lastIndexOf("/") + 1).replace(/\.[a-z0-9]{1,4}$/i, ""));
  const ofFolders = [...folder.split("/")].reverse().map(nameOffers);
  const named = <Name extends keyof NameOffers>(name: Name): readonly Offer<NonNullable<NameOffers[Name]>>[] => [
    ...offer(ofFile[name], "file name"),
    ...ofFolders.flatMap((each) => offer(each[name], "folder name")),
  ];
  const tests = [...said(hints, "test", isTest), ...named("test")];
  // A trace says nothing against a variant of what it looks like.
  const seen = tests.some(({ value }) => mayBeVariant(recognised?.test, value)) ? undefined : recognised?.test;
  const sides = [...said(hints, "side", isLimb), ...named("limb")];
  return {
    test: distinct([...tests, ...offer(seen, "trace")]),
    limb: distinct(sides),
    dropHeightMetres: distinct([...said(hints, "dropHeight", isNumber), ...named("dropHeightMetres")]),
    leadingLeg: distinct(named("leadingLeg")),
    athlete: distinct(said(hints, "athlete", isText)),
    date: distinct([...said(hints, "date", isText), ...named("date")]),
  };
}

function offer<Value>(value: Value | undefined, from: string): readonly Offer<NonNullable<Value>>[] {
  return value === undefined || value === null ? [] : [{ value, from }];
}

function said<Value>(
  hints: readonly HeaderHint[],
  kind: HeaderHintKind,
  is: (value: unknown) => value is Value,
): readonly Offer<Value>[] {
  return hints.flatMap((hint) =>
    hint.kind === kind && is(hint.value) ? [{ value: hint.value, from: `header, line ${hint.line}` }] : [],
  );
}

function distinct<Value>(offers: readonly Offer<Value>[]): readonly Offer<Value>[] {
  return offers.filter((each, at) => offers.findIndex((other) => other.value === each.value) === at);
}

function isTest(value: unknown): value is TestKind {
  return testKinds.some((each) => each === value);
}

function isLimb(value: unknown): value is Limb {
  return value === "left" || value === "right" || value === "both";
}

function isNumber(value: unknown): value is number {
  return typeof value === "number" && value > 0;
}

function isText(value: unknown): value is string {
  return typeof value === "string" && value.trim() !== "";
}
