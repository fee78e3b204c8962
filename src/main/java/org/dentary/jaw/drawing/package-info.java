/**
 * The drawings of teeth and jaws, made of outlines in code so that screen and print show the same ones.
 *
 * <p>It knows no key and no reading; a drawing is asked for by its name.
 *
 * <p>Start reading at {@link org.dentary.jaw.drawing.JawDrawings}.
 */
package org.dentary.jaw.drawing;
