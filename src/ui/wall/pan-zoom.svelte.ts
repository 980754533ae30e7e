/** Looking closer at a picture: two fingers, or steps; one finger moves it when it is larger. */
type Spot = { readonly x: number; readonly y: number };
type Finger = Spot & { readonly id: number };

const closest = 6;

export function panZoom(size: () => { readonly width: number; readonly height: number }) {
  let scale = $state(1);
  let x = $state(0);
  let y = $state(0);
  let fingers: readonly Finger[] = [];

  const within = (value: number, length: number): number =>
    Math.min(0, Math.max(length * (1 - scale), value));

  function settle(): void {
    const { width, height } = size();
    x = within(x, width);
    y = within(y, height);
  }

  /** What lies under the spot stays there. */
  function closer(by: number, spot?: Spot): void {
    const { width, height } = size();
    const at = spot ?? { x: width / 2, y: height / 2 };
    const next = Math.min(closest, Math.max(1, scale * by));
    x = at.x - ((at.x - x) * next) / scale;
    y = at.y - ((at.y - y) * next) / scale;
    scale = next;
    settle();
  }

  const middle = (): Spot => {
    const sum = fingers.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
    return { x: sum.x / fingers.length, y: sum.y / fingers.length };
  };

  const spread = (): number => {
    const [a, b] = fingers;
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  };

  return {
    get transform(): string {
      return `translate(${x} ${y}) scale(${scale})`;
    },
    get isClose(): boolean {
      return scale > 1;
    },
    get isClosest(): boolean {
      return scale >= closest;
    },
    closer,
    /** What lies under the spot, on the picture as it is without looking closer. */
    under: (spot: Spot): Spot => ({ x: (spot.x - x) / scale, y: (spot.y - y) / scale }),
    /** Moves on by so much of the picture's width and height, for who cannot drag it. */
    shift(across: number, down: number): void {
      const { width, height } = size();
      x -= across * width;
      y -= down * height;
      settle();
    },
    whole(): void {
      scale = 1;
      x = 0;
      y = 0;
    },
    down(id: number, spot: Spot): void {
      fingers = [...fingers, { id, ...spot }];
    },
    /** Whether the picture moved with the finger. */
    move(id: number, spot: Spot): boolean {
      if (!fingers.some((finger) => finger.id === id)) return false;
      const [from, apart] = [middle(), spread()];
      fingers = fingers.map((finger) => (finger.id === id ? { id, ...spot } : finger));
      const to = middle();
      if (fingers.length > 1 && apart > 0) closer(spread() / apart, to);
      if (scale === 1) return false;
      x += to.x - from.x;
      y += to.y - from.y;
      settle();
      return true;
    },
    up(id: number): void {
      fingers = fingers.filter((finger) => finger.id !== id);
    },
  };
}
