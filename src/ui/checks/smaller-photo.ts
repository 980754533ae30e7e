/**
 * A photo as it is sent: upright, no longer than it takes to see a lap, and drawn anew, so that nothing that
 * the camera wrote besides goes along. The server takes such notes away as well.
 */
const longestSide = 1600;
const largest = 1_200_000;
const qualities = [0.82, 0.7, 0.55];

const drawnAs = (canvas: HTMLCanvasElement, quality: number): Promise<Blob | null> =>
  new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));

/** Undefined for a file that is no picture. */
export async function smallerPhoto(file: Blob): Promise<Blob | undefined> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(
    () => undefined,
  );
  if (!picture) return undefined;
  const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  for (const quality of qualities) {
    const blob = await drawnAs(canvas, quality);
    if (blob && blob.size <= largest) return blob;
  }
  return undefined;
}
