/** A value from outside the project, and where it was read or that it was not. */
export interface Cited<T> {
  readonly value: T;
  readonly source: string;
}
