/**
 * What may go into a laboratory's box: the pure rules, the facts they judge by, and a packed tube as they leave it. Reading
 * the facts and keeping the box is done one package up. Start reading at {@link
 * org.dentary.submission.packing.PackingRules}.
 */
package org.dentary.submission.packing;
