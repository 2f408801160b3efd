import { expect, test } from "vitest";
import { channelValues, storedValues } from "../../../../core/bytes/c3d/analog-samples.ts";
import { readHeader } from "../../../../core/bytes/c3d/header.ts";
import { numberOf, numbersOf, textsOf } from "../../../../core/bytes/c3d/parameter-values.ts";
import { readC3d } from "../../../../core/bytes/c3d/read-c3d.ts";
import { byteOrderOf } from "../../../../core/bytes/c3d/words.ts";
import { inspectC3d } from "../../../../core/recording/c3d/inspect-c3d.ts";
import { loadPlatforms } from "../../../../core/recording/c3d/platform-load.ts";
import { readC3dRecording } from "../../../../core/recording/c3d/read-c3d-recording.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";
import { c3dSamples } from "../../bytes/c3d/c3d-samples.ts";

// Expected values: expected.json beside the public samples, 10 significant digits, computed outside this program.
/** Of a channel's largest magnitude. */
const valueTolerance = 1e-9;
/** Of sums and impulses, relative. */
const sumTolerance = 1e-8;

const samples = c3dSamples();

function largestOf(values: Iterable<number>): number {
  let largest = 0;
  for (const value of values) largest = Math.max(largest, Math.abs(value));
  return largest;
}

function expectNear(actual: number | null | undefined, expected: number, tolerance: number, label: string): void {
  expect(Math.abs((actual ?? Number.NaN) - expected), label).toBeLessThanOrEqual(tolerance);
}

const sumOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

for (const { name, bytes, expected } of samples) {
  const { file } = readC3d(bytes);
  if (file === undefined) throw new Error(`${name} cannot be read`);

  test(`${name}: header, rates and counts are those of the reference`, () => {
    const header = readHeader(file.words);
    const { scale, frame_rate, parameter_block, ...counts } = expected.header;
    expect({
      points: header.points,
      analog_words_per_frame: header.analogWords,
      first_frame: header.firstFrame,
      last_frame: header.lastFrame,
      data_start_block: header.dataStartBlock,
      analog_samples_per_frame: header.samplesPerFrame,
    }).toEqual(counts);
    expect(bytes[0]).toBe(parameter_block);
    expectNear(header.scale, scale, valueTolerance * Math.abs(scale), "scale");
    expect(header.frameRateHz).toBe(frame_rate);
    expect(byteOrderOf(expected.processor)).toBe(file.words.byteOrder);
    expect(file.layout).toMatchObject({
      dataType: expected.storage === "float32" ? "float" : "integer",
      points: expected.header.points,
      channelCount: expected.analog_channels,
      frames: expected.frames,
      statedFrames: expected.frames_declared,
    });
    expect(file.frameRateHz).toBe(expected.point_rate_hz);
    expect(file.analogRateHz).toBe(expected.analog_rate_hz);
    expect(numberOf(file.parameters, "ANALOG:RATE", "signed") ?? null).toBe(expected.analog_rate_param);
    expect(textsOf(file.parameters, "POINT:UNITS")?.[0]).toBe(expected.point_units);
    expect(numbersOf(file.parameters, "FORCE_PLATFORM:ZERO", "unsigned")).toEqual(expected.zero_param);
  });

  test(`${name}: channels, scales, stored and scaled values are those of the reference`, () => {
    expect(file.channels.map(({ label }) => label)).toEqual(expected.analog_labels);
    expect(file.channels.map(({ unit }) => unit)).toEqual(expected.analog_units);
    expect(file.isUnsigned).toBe(expected.analog_unsigned);
    expectNear(file.generalScale, expected.gen_scale, valueTolerance * Math.abs(expected.gen_scale), "GEN_SCALE");
    for (let channel = 0; channel < 6; channel++) {
      const { scale, offset } = file.channels[channel]!;
      expect(offset).toBe(expected.offset_first6[channel]);
      expectNear(scale, expected.scale_first6[channel]!, valueTolerance * Math.abs(scale), `scale ${channel}`);
      const stored = storedValues(file, channel + 1);
      const values = channelValues(file, channel + 1);
      expect(values).toHaveLength(expected.analog_samples_per_channel);
      for (const [row, sample] of expected.sample_indexes.entries()) {
        const label = `channel ${channel + 1}, sample ${sample}`;
        const storedWanted = expected.stored_first6[row]![channel]!;
        expectNear(stored[sample], storedWanted, valueTolerance * largestOf(stored), label);
        const wanted = expected.analog_first6[row]![channel]!;
        expectNear(values[sample], wanted, valueTolerance * largestOf(values), label);
      }
    }
  });

  test(`${name}: every platform's force, sums, zero and directions are those of the reference`, () => {
    const { platforms, loads, upwardAxis, signToUp } = loadPlatforms(file, defaultSettings);
    expect(platforms).toHaveLength(expected.platforms_used);
    expect(platforms.map(({ type }) => type)).toEqual(expected.platform_types);
    for (const [index, wanted] of expected.platforms.entries()) {
      const { platform, force, axes, upward, isTilted } = loads[index]!;
      const label = (what: string): string => `${name}, platform ${index + 1}, ${what}`;
      expect(platform.channels).toEqual(wanted.channels);
      const places = [...wanted.corners.flat(), ...wanted.origin];
      for (const [at, value] of [...platform.corners.flat(), ...platform.origin].entries()) {
        expectNear(value, places[at]!, valueTolerance * largestOf(places), label("corners and origin"));
      }
      for (const [axis, value] of wanted.plate_z_in_lab.entries()) {
        expectNear(axes?.z[axis], value, valueTolerance, label("direction of z"));
      }
      expect(upwardAxis).toBe(wanted.lab_up_axis);
      expect(signToUp).toBe(wanted.sign_to_up);
      expect(isTilted).toBe(false);

      const largest = largestOf(force.z);
      const near = (actual: number, value: number, what: string): void =>
        expectNear(actual, value, valueTolerance * largest, label(what));
      const nearSum = (actual: number, value: number, what: string): void =>
        expectNear(actual, value, sumTolerance * Math.abs(value), label(what));
      const rate = expected.analog_rate_hz;
      const sum = sumOf(force.z);
      const ends = (force.z[0]! + force.z.at(-1)!) / 2;
      near(Math.min(...force.z), wanted.fz_plate.min, "least");
      near(Math.max(...force.z), wanted.fz_plate.max, "largest");
      near(sum / force.z.length, wanted.fz_plate.mean, "mean");
      nearSum(sum, wanted.fz_plate.sum, "sum");
      nearSum(sum / rate, wanted.fz_plate.impulse_sum_Ns, "impulse as a sum");
      nearSum((sum - ends) / rate, wanted.fz_plate.impulse_trapezoid_Ns, "impulse by trapezoids");
      expect(Math.abs(force.z[wanted.fz_plate.argmax_abs]!)).toBe(largest);
      near(Math.max(...upward), wanted.fz_up.max, "upward peak");
      near(Math.max(...upward), wanted.fz_up.peak, "upward peak");
      near(Math.min(...upward), wanted.fz_up.min, "upward least");
      near(sumOf(upward) / upward.length, wanted.fz_up.mean, "upward mean");
      nearSum(sumOf(upward), wanted.fz_up.sum, "upward sum");
      nearSum(sumOf(upward) / rate, wanted.fz_up.impulse_sum_Ns, "upward impulse");

      const [first, last] = expected.zero_frames;
      const { samplesPerFrame } = file.layout;
      const empty = force.z.subarray((first - 1) * samplesPerFrame, last * samplesPerFrame);
      const zero = sumOf(empty) / empty.length;
      const zeroed = force.z.map((value) => value - zero);
      near(zero, wanted.fz_zero_mean, "zero");
      near(Math.min(...zeroed), wanted.fz_plate_zeroed.min, "least without zero");
      near(Math.max(...zeroed), wanted.fz_plate_zeroed.max, "largest without zero");
      near(sumOf(zeroed) / zeroed.length, wanted.fz_plate_zeroed.mean, "mean without zero");
      nearSum(sumOf(zeroed), wanted.fz_plate_zeroed.sum, "sum without zero");

      for (const [row, sample] of expected.sample_indexes.entries()) {
        const own = [force.x[sample]!, force.y[sample]!, force.z[sample]!] as const;
        near(own[2], wanted.fz_plate.at_indexes[row]!, `sample ${sample}`);
        const components = [largestOf(force.x), largestOf(force.y), largest];
        const whole = Math.hypot(...components);
        for (let axis = 0; axis < 3; axis++) {
          const ofPlate = wanted.force_plate_at_indexes[row]![axis]!;
          const ofLaboratory = wanted.force_lab_at_indexes[row]![axis]!;
          expectNear(own[axis], ofPlate, valueTolerance * components[axis]!, label(`axis ${axis}, sample ${sample}`));
          const turned = axes!.x[axis]! * own[0] + axes!.y[axis]! * own[1] + axes!.z[axis]! * own[2];
          expectNear(turned, ofLaboratory, valueTolerance * whole, label(`laboratory ${axis}, sample ${sample}`));
        }
      }
    }
  });

  test(`${name}: inspection and recording give the same figures as the reference`, () => {
    const inspection = inspectC3d(bytes, expected.sample_indexes, defaultSettings);
    expect(inspection).toMatchObject({
      sampleCount: expected.analog_samples_per_channel,
      storedForce: "reaction",
      zeroFrames: expected.zero_param,
    });
    expect(inspection.channels).toHaveLength(expected.analog_channels);
    for (const [index, wanted] of expected.platforms.entries()) {
      const { stored, upwardNewtons, rateHz } = inspection.platforms[index]!;
      const scale = valueTolerance * Math.max(Math.abs(wanted.fz_plate.min), Math.abs(wanted.fz_plate.max));
      expect(rateHz).toBe(expected.analog_rate_hz);
      for (const [row, value] of wanted.fz_plate.at_indexes.entries()) {
        expectNear(stored?.values[row], value, scale, `stored ${row}`);
        expectNear(upwardNewtons?.values[row], wanted.sign_to_up * value, scale, `upward ${row}`);
      }
      expectNear(stored?.minimum, wanted.fz_plate.min, scale, "minimum");
      expectNear(stored?.maximum, wanted.fz_plate.max, scale, "maximum");
      expectNear(stored?.mean, wanted.fz_plate.mean, scale, "mean");
      expectNear(upwardNewtons?.maximum, wanted.fz_up.peak, scale, "peak");
    }
    for (const [channel, { values, minimum, maximum }] of inspection.channels.slice(0, 6).entries()) {
      const scale = valueTolerance * Math.max(Math.abs(minimum ?? 0), Math.abs(maximum ?? 0));
      for (const [row, wanted] of expected.analog_first6.entries()) {
        expectNear(values[row], wanted[channel]!, scale, `channel ${channel + 1}, row ${row}`);
      }
    }
    // Four loaded platforms leave open which foot stood where, so two are stated.
    const answers = expected.platforms_used > 2 ? { left: 1, right: 2 } : {};
    const { recording, findings } = readC3dRecording(bytes, answers, defaultSettings);
    expect(findings.filter(({ severity }) => severity === "refusal")).toEqual([]);
    expect(recording).toMatchObject({
      rateHz: expected.analog_rate_hz,
      sampleCount: expected.analog_samples_per_channel,
    });
    for (const [index, plate] of (recording?.plates ?? []).entries()) {
      const { peak } = expected.platforms[index]!.fz_up;
      expect(plate).toMatchObject({ name: `force platform ${index + 1}`, proof: "unproved" });
      expectNear(Math.max(...plate.force), peak, valueTolerance * peak, "peak of the plate");
    }
    expect(recording?.plates).toHaveLength(Math.min(2, expected.platforms_used));
  });
}

test("the five encodings of one recording hold the same values, bit for bit", () => {
  const encodings = samples.filter(({ name }) => /^(dec|pc|sgi)_/.test(name));
  const [first, ...others] = encodings.map(({ bytes }) => readC3dRecording(bytes, {}, defaultSettings).recording);
  for (const other of others) expect(other).toEqual(first);
  expect(encodings).toHaveLength(samples.length === 0 ? 0 : 5);
});

test("the calibration matrix of the type-4 sample turns counts into the forces of its own sheet", () => {
  const sample = samples.find(({ name }) => name === "TYPE-4.C3D");
  const { file } = sample === undefined ? {} : readC3d(sample.bytes);
  if (file === undefined) return;
  const { calibration } = loadPlatforms(file, defaultSettings).platforms[0]!;
  // C3D notes, §6: scales, counts and forces of the manufacturer's sheet, good to 0.2 N.
  const scales = [-0.122206, -0.122206, -0.122138, -0.122206, -0.122206, -0.122206];
  const volts = [3000, 2047, 3000, 2047, 3000, 2047].map((count, input) => (count - 2047) * scales[input]!);
  const forces = [0, 1, 2].map((row) =>
    volts.reduce((sum, volt, input) => sum + calibration[6 * input + row]! * volt, 0),
  );
  for (const [row, wanted] of [-178.07, -0.43, -702.32].entries()) expectNear(forces[row], wanted, 0.2, `row ${row}`);
});
