/** What is told of each option, the reference first. */
export interface CompareRow {
  readonly name: string;
  readonly label: string;
  readonly cells: readonly CompareCell[];
  readonly differs: boolean;
}

export interface CompareCell {
  readonly text: string;
  /** How far it is from the reference's, in words; empty for the reference and where it is the same. */
  readonly difference: string;
}
