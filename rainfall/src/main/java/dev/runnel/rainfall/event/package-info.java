/**
 * Storms out of a record of rain, and the dry days between them.
 *
 * <p>Rain comes in bursts; which of them belong to one event is a matter of agreement. The agreement used here is the
 * minimum inter-event time: a dry gap at least that long starts a new event
 * ({@link dev.runnel.rainfall.event.EventSeparation}). Values in use run from 15 min to more than 24 h and change every
 * figure that follows: in one five-year record they gave 550 events at 15 min and 118 at 24 h (Dunkerley 2008,
 * Hydrological Processes 22, 5024-5036). For a sewer the time should be no shorter than the time the flow takes to
 * return to its dry-weather course.
 *
 * <p>An {@linkplain dev.runnel.rainfall.event.RainfallEvent event} is measured by its depth P [mm], duration D, mean
 * intensity P/D [mm/h] and, for each duration asked for, the {@linkplain dev.runnel.rainfall.event.SlidingMaximum
 * greatest depth} in any window of that length.
 *
 * <p>Records may arrive step by step or tip by tip ({@link dev.runnel.rainfall.event.EventDetector},
 * {@link dev.runnel.rainfall.event.TipEventDetector}); the state of either can be kept and gone on with in the middle of a storm.
 *
 * <p>Missing steps are unknown, neither wet nor dry. They are counted wherever they touch a result, and the rule for
 * each is written where it applies.
 */
@NullMarked
package dev.runnel.rainfall.event;

import org.jspecify.annotations.NullMarked;
