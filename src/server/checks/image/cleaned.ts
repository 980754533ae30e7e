/** What a cleaner of one kind found: the parts that stay, and how large the picture is. */
export type Cleaned = {
  readonly parts: readonly Uint8Array[];
  readonly width: number;
  readonly height: number;
};

/**
 * `UNKNOWN_KIND`: not JPEG, PNG or WebP. `DAMAGED`: it breaks off or breaks its own rules. `NOT_STILL`: it
 * moves. `TOO_MANY_PIXELS`: a small file that would fill the memory of whoever looks at it.
 */
export type ImageFault = 'UNKNOWN_KIND' | 'DAMAGED' | 'NOT_STILL' | 'TOO_MANY_PIXELS';
