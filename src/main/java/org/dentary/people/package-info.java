/**
 * Who and what can hold a sample: persons on the roster, organisations, stores with their keepers; and who has
 * acknowledged the protocol. Accounts and passwords belong to the ground. Start reading at {@link
 * org.dentary.people.PeopleService}.
 */
package org.dentary.people;
