/**
 * The one table of states: what may become what, by which event, by whom. It holds no rule of any room. Start reading at
 * {@link org.dentary.platform.state.States}.
 */
package org.dentary.platform.state;
