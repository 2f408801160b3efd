import { describe, expect, test } from "vitest";
import { recordingByteLimit } from "../../../core/recording/size-limit.ts";
import { hostRequests } from "../../../electron/boundary/host-requests.ts";
import { channelOf, isRequestName, requestNames } from "../../../electron/boundary/request-names.ts";

const accepts = (name: keyof typeof hostRequests, request: unknown) =>
  hostRequests[name].schema.safeParse(request).success;

describe("the names of the boundary", () => {
  test("every request has exactly one schema and one channel", () => {
    expect(Object.keys(hostRequests).toSorted()).toEqual([...requestNames].toSorted());
    expect(new Set(requestNames.map(channelOf)).size).toBe(requestNames.length);
  });

  test("names every object carries are no requests", () => {
    for (const name of ["constructor", "__proto__", "toString", "hasOwnProperty", ""]) {
      expect(isRequestName(name), name).toBe(false);
    }
  });
});

describe("the schemas of requests", () => {
  test("a member that nobody asked for is refused", () => {
    expect(accepts("workspace.read", {})).toBe(true);
    expect(accepts("workspace.read", { extra: 1 })).toBe(false);
    expect(accepts("trials.trace", { folder: "", file: "a.csv", trial: 1 })).toBe(true);
    expect(accepts("trials.trace", { folder: "", file: "a.csv", trial: 1, also: true })).toBe(false);
  });

  test("paths that climb, start at the root or use backslashes are refused", () => {
    const bytes = new Uint8Array(3);
    for (const path of ["a.csv", "a/b.csv", "Økt 1/høyre ben.csv"]) {
      expect(accepts("recordings.add", { path, bytes }), path).toBe(true);
    }
    for (const path of [
      "",
      "/etc/passwd",
      "../a.csv",
      "a/../b.csv",
      "a//b.csv",
      "./a.csv",
      "a\\b.csv",
      "a\u0000.csv",
    ]) {
      expect(accepts("recordings.add", { path, bytes }), path).toBe(false);
    }
  });

  test("a recording larger than the limit is refused, one of exactly the limit is taken", () => {
    expect(accepts("recordings.add", { path: "a.csv", bytes: new Uint8Array(recordingByteLimit) })).toBe(true);
    expect(accepts("recordings.add", { path: "a.csv", bytes: new Uint8Array(recordingByteLimit + 1) })).toBe(false);
  });

  test("a part cannot be present without a value", () => {
    const request = (change: unknown) => ({ folder: "", change });
    expect(accepts("session.change", request({ massKg: 70 }))).toBe(true);
    expect(accepts("session.change", request({ massKg: null }))).toBe(true);
    expect(accepts("session.change", request({ massKg: undefined }))).toBe(false);
    expect(accepts("session.change", request({ massKg: -1 }))).toBe(false);
    expect(accepts("session.change", request({ date: "2026-02-30" }))).toBe(false);
  });

  test("an event cannot be named twice, nor be moved to no time at all", () => {
    const request = (events: unknown) => ({ folder: "", file: "a.csv", trial: 1, change: { events } });
    const takeoff = { name: "takeoff", time: 1 };
    expect(accepts("trials.change", request([takeoff]))).toBe(true);
    expect(accepts("trials.change", request([takeoff, { ...takeoff, time: 2 }]))).toBe(false);
    expect(accepts("trials.change", request([{ ...takeoff, time: Number.NaN }]))).toBe(false);
    expect(accepts("trials.change", request([{ ...takeoff, time: -1 }]))).toBe(false);
  });

  test("feet are swapped or stated, for one file at least", () => {
    const request = (files: unknown, feet: unknown) => ({ folder: "", files, feet });
    expect(accepts("trials.statePlates", request(["a.csv"], "swap"))).toBe(true);
    expect(accepts("trials.statePlates", request(["a.csv"], [{ column: "left", foot: "right" }]))).toBe(true);
    expect(accepts("trials.statePlates", request(["a.csv"], []))).toBe(true);
    expect(accepts("trials.statePlates", request(["a.csv"], "left"))).toBe(true);
    expect(accepts("trials.statePlates", request([], "swap"))).toBe(false);
    expect(accepts("trials.statePlates", request(["a.csv"], "turn"))).toBe(false);
    expect(accepts("trials.statePlates", request(["a.csv"], [{ column: "left", foot: "both" }]))).toBe(false);
  });

  test("several trials are kept or excluded together, one at least", () => {
    const request = (trials: unknown, decision: unknown) => ({ folder: "", trials, decision });
    expect(accepts("trials.keepOrExclude", request([{ file: "a.csv", trial: 1 }], { kept: true }))).toBe(true);
    expect(accepts("trials.keepOrExclude", request([{ file: "a.csv", trial: 1 }], { seen: true }))).toBe(false);
    expect(accepts("trials.keepOrExclude", request([], { kept: true }))).toBe(false);
  });

  test("an exclusion needs a reason", () => {
    const request = (excluded: unknown) => ({ folder: "", file: "a.csv", trial: 1, change: { excluded } });
    expect(accepts("trials.change", request({ reason: "slipped" }))).toBe(true);
    expect(accepts("trials.change", request({ reason: "" }))).toBe(false);
    expect(accepts("trials.change", request(null))).toBe(true);
  });
});
