/**
 * What goes wrong, told once and the same way: typed refusals for the rooms, RFC 9457 problems for programs, one page
 * for people. It decides nothing about what is allowed. Start reading at {@link
 * org.dentary.platform.problem.DomainException}.
 */
package org.dentary.platform.problem;
