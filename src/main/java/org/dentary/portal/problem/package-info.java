/**
 * What each problem of the service means and what to do, as pages that a problem's address leads to, and as a table. Where a
 * problem is raised is not known here. Start reading at {@link org.dentary.portal.problem.Explanations}.
 */
package org.dentary.portal.problem;
