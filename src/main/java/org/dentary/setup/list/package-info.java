/**
 * The lists a season is set up with: their columns, what a cell of each may hold, and how it travels to the database and
 * back. What two lines or two lists must agree on is checked one package up. Start reading at {@link
 * org.dentary.setup.list.SetUpList}.
 */
package org.dentary.setup.list;
