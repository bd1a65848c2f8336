/** The plate that the rails of the accessory frame take: pushed in from above, it stands on their feet and rests on the ring. */
export interface RailPlate {
  readonly width: number;
  readonly bottom: number;
  /** Of the rails; the plate may stand out above them. */
  readonly railTop: number;
  /** z of its rear face. */
  readonly rear: number;
  /** Half of what may stand on its front between the lips. */
  readonly betweenLips: number;
  /** z that what is wider than that must stay ahead of. */
  readonly beyondLips: number;
}
