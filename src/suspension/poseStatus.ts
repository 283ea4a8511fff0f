/** What stopped a pose, or `Ok`. Geometry that cannot be is an answer, not an exception. */
export const PoseStatus = {
  Ok: 0,
  /** The upper arm's circle and the sphere of radius `span` about the lower ball joint do not meet. */
  UpperArmOutOfReach: 1,
  /** No turn of the knuckle keeps the tie rod's length. */
  TieRodOutOfReach: 2,
  /** The idler arm's circle cannot meet the center link. */
  IdlerOutOfReach: 3,
  /** The lower arm cannot lift or lower the wheel that far (it would pass its own top or bottom). */
  LowerArmOutOfReach: 4,
} as const;

export type PoseStatus = (typeof PoseStatus)[keyof typeof PoseStatus];

/** The joint a status names, in words a builder uses. */
export function jointOf(status: PoseStatus): string {
  switch (status) {
    case PoseStatus.UpperArmOutOfReach:
      return "upper ball joint";
    case PoseStatus.TieRodOutOfReach:
      return "outer tie rod end";
    case PoseStatus.IdlerOutOfReach:
      return "idler arm end";
    case PoseStatus.LowerArmOutOfReach:
      return "lower ball joint";
    case PoseStatus.Ok:
      return "none";
  }
}
