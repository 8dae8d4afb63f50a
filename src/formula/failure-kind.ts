/** `division`: by zero. `notFound`: MATCH or an empty column. `outside`: INDEX past the column. `undefined`: no real answer or too large. */
export type FailureKind = 'division' | 'notFound' | 'outside' | 'undefined';
