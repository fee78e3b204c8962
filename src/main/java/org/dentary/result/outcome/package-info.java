/** What the findings say of an animal and a disease, by the plan's rules, with its reasons. */
package org.dentary.result.outcome;
