/**
 * Photographs of jaws: taken in, made anew without anything but the picture, shown to readers, erased.
 *
 * <p>What a photograph shows is not judged here; a reading from it is a reading like any other.
 *
 * <p>Start reading at {@link org.dentary.jaw.photo.JawPhotoService}; what is kept of a file is decided in {@link
 * org.dentary.platform.photo.PhotoReader}.
 */
package org.dentary.jaw.photo;
