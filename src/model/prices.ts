/** What things cost, as somebody wrote it down: amounts of one currency, whichever that is. */
export interface Prices {
  /** As it is printed behind amounts. */
  readonly currency: string;
  /** Of bought things, in per cent, where a thing says no other. */
  readonly spares: number;
  readonly sheets: readonly SheetPrice[];
  readonly bought: readonly BoughtPrice[];
  readonly printed: readonly PrintedPrice[];
  /** Of a minute at the laser; null where that costs nothing, or nobody knows what. */
  readonly perMinute: number | null;
}

export interface SheetPrice {
  /** As the sheets are called, plywood-4.05, or its word alone: plywood. */
  readonly material: string;
  /** The sheets that it holds for; null for every size. */
  readonly sheet: { readonly width: number; readonly height: number } | null;
  /** Of one sheet. */
  readonly price: number;
}

export interface BoughtPrice {
  /** As in the list of hardware. */
  readonly name: string;
  /** As in the list, or what stands there before the first comma; null for every size. */
  readonly size: string | null;
  /** Of a pack; null where only spares are said. */
  readonly price: number | null;
  /** Pieces in it. */
  readonly pack: number;
  /** In per cent; null for those of the file. */
  readonly spares: number | null;
}

export interface PrintedPrice {
  readonly material: string;
  readonly perKg: number;
}
