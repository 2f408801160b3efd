import { existsSync, readFileSync } from "node:fs";

/** One platform of the reference values; figures follow `sample_indexes` of their file. */
interface ExpectedPlatform {
  readonly type: number;
  readonly channels: readonly number[];
  readonly origin: readonly number[];
  readonly corners: readonly (readonly number[])[];
  readonly plate_z_in_lab: readonly number[];
  readonly lab_up_axis: string;
  readonly sign_to_up: number;
  readonly fz_plate: {
    readonly min: number;
    readonly max: number;
    readonly mean: number;
    readonly sum: number;
    readonly impulse_sum_Ns: number;
    readonly impulse_trapezoid_Ns: number;
    readonly argmax_abs: number;
    readonly at_indexes: readonly number[];
  };
  readonly fz_up: {
    readonly mean: number;
    readonly sum: number;
    readonly impulse_sum_Ns: number;
    readonly peak: number;
    readonly min: number;
    readonly max: number;
  };
  readonly fz_zero_mean: number;
  readonly fz_plate_zeroed: { readonly min: number; readonly max: number; readonly mean: number; readonly sum: number };
  readonly force_plate_at_indexes: readonly (readonly number[])[];
  readonly force_lab_at_indexes: readonly (readonly number[])[];
}

/** Reference values of one public sample (expected.json beside the samples, computed independently of this program). */
export interface ExpectedC3d {
  readonly local: string;
  readonly processor: number;
  readonly storage: "float32" | "int16";
  readonly header: {
    readonly parameter_block: number;
    readonly points: number;
    readonly analog_words_per_frame: number;
    readonly first_frame: number;
    readonly last_frame: number;
    readonly scale: number;
    readonly data_start_block: number;
    readonly analog_samples_per_frame: number;
    readonly frame_rate: number;
  };
  readonly point_rate_hz: number;
  readonly analog_rate_param: number | null;
  readonly analog_rate_hz: number;
  readonly frames: number;
  readonly frames_declared: number;
  readonly point_units: string;
  readonly analog_channels: number;
  readonly analog_samples_per_channel: number;
  readonly analog_unsigned: boolean;
  readonly gen_scale: number;
  readonly analog_labels: readonly string[];
  readonly analog_units: readonly string[];
  readonly sample_indexes: readonly number[];
  readonly analog_first6: readonly (readonly number[])[];
  readonly stored_first6: readonly (readonly number[])[];
  readonly offset_first6: readonly number[];
  readonly scale_first6: readonly number[];
  readonly platforms_used: number;
  readonly platform_types: readonly number[];
  readonly zero_param: readonly number[];
  readonly zero_frames: readonly [number, number];
  readonly platforms: readonly ExpectedPlatform[];
}

/** A public sample with its reference values. */
export interface C3dSample {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly expected: ExpectedC3d;
}

const folder = new URL("../../../../../shared/c3d-samples/", import.meta.url);

/** The public samples of c3d.org, where they lie beside the project; they are not part of it. */
export function c3dSamples(): readonly C3dSample[] {
  const list = new URL("expected.json", folder);
  if (!existsSync(list)) {
    console.info("not run: the public C3D samples are not part of the project and do not lie beside it");
    return [];
  }
  const { files }: { readonly files: readonly ExpectedC3d[] } = JSON.parse(readFileSync(list, "utf8"));
  return files.map((expected) => ({
    name: expected.local,
    bytes: new Uint8Array(readFileSync(new URL(expected.local, folder))),
    expected,
  }));
}
