/**
 * How far two or more readers of the same things agree, beyond chance. Who is right, and what follows for a reader, is no
 * matter of this package. Start reading at {@link org.dentary.statistics.agreement.Agreement}.
 */
package org.dentary.statistics.agreement;
