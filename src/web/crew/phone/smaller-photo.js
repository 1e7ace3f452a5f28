// Makes a photo small enough for a poor connection, before it is kept. What cannot be drawn stays as it is.

/** Longest side [px], and how much JPEG may lose [-]. */
const LONGEST_PX = 1600;
const QUALITY = 0.82;

/** @param {Blob} photo @returns {Promise<Blob>} a JPEG, without what the camera wrote beside the picture */
export async function smallerPhoto(photo) {
  try {
    const picture = await createImageBitmap(photo, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    /** @type {Blob | null} */
    const small = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
    return small ?? photo;
  } catch {
    return photo;
  }
}
