import { expect, test } from "vitest";
import { measureCatalogue, measureEntry } from "../../../../core/ground/measures/catalogue.ts";
import { english } from "../../../../core/words/english.ts";

test("Every measure has an identifier of its own, a label, a definition in a sentence and a source", () => {
  const ids = measureCatalogue.map((entry) => entry.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const entry of measureCatalogue) {
    expect(english.measures.label(entry.id)).toMatch(/^[A-Z]/);
    expect(english.measures.definition(entry.id)).toMatch(/^[A-Z].*\.$/);
    expect(entry.source).not.toBe("");
  }
});

test("A measure is named quantity first, its phase behind the quantity", () => {
  expect(english.measures.fullLabel("peakBrakingForce")).toBe("Force in braking, peak");
  expect(english.measures.fullLabel("brakingImpulse")).toBe("Impulse in braking, gross");
  expect(english.measures.fullLabel("brakingTime")).toBe("Duration of braking");
  expect(english.measures.fullLabel("forceAtLowestPosition")).toBe("Force at the lowest position");
  expect(english.measures.fullLabel("jumpHeightImpulse")).toBe("Jump height, by impulse");
  expect(english.measures.fullLabel("propulsionImpulsePerBodyMass")).toBe(
    "Impulse in propulsion, gross, per body mass",
  );
});

test("A form by body size has its own identifier and unit", () => {
  expect(measureEntry("brakingImpulsePerBodyMass").unit).toBe("N.s/kg");
  expect(measureEntry("peakLandingForcePerBodyWeight").unit).toBe("1");
  expect(measureEntry("peakPropulsionPowerPerBodyMass").unit).toBe("W/kg");
});

test("Measures that only inform say so: none of them may enter a criterion", () => {
  for (const id of ["brakingRateOfForceDevelopment", "verticalStiffnessBraking", "timeToStabilisation"]) {
    expect(measureEntry(id).informationOnly).toBe(true);
  }
});

test("An identifier that is in no catalogue is a mistake", () => {
  expect(() => measureEntry("flightOverContact")).toThrow(RangeError);
});
