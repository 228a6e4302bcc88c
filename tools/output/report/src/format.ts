// SPDX-License-Identifier: Apache-2.0
// Numbers for people: fixed decimals, a real minus sign, a unit after a space.

export function fixed(value: number, digits: number): string {
  if (!Number.isFinite(value)) return "–";
  const text = value.toFixed(digits);
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}

export function signed(value: number, digits: number): string {
  const text = fixed(value, digits);
  return value > 0 && Number(value.toFixed(digits)) !== 0 ? `+${text}` : text;
}

export function with_unit(value: number, digits: number, unit: string): string {
  return unit === "" ? fixed(value, digits) : `${fixed(value, digits)} ${unit}`;
}

/** Three significant digits without trailing zeros: ends of a scale. */
export function tidy(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(3))).replace("-", "−") : "–";
}

/** A ± with the decimals of its value, rounded as the summary rounds it, but never to nothing. */
export function error_text(error: number, digits: number): string {
  return (Math.max(1, Math.round(error * 10 ** digits)) / 10 ** digits).toFixed(digits);
}

export function sentence_case(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

export function millimetres(value: number): string {
  return `${fixed(value, Math.abs(value - Math.round(value)) < 0.05 ? 0 : 1)} mm`;
}
