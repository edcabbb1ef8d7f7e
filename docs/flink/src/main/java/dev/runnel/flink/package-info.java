/**
 * The machines of Runnel on many sites at once, in Apache Flink.
 *
 * <p>A {@link dev.runnel.timeseries.Machine} serves one record, keeps all it knows in a state with a text form, and gives
 * the same for the same inputs. That is what a stream engine asks of a function on a keyed stream. So one adapter serves
 * every rule: {@link dev.runnel.flink.RuleFunction} runs one machine for each site, and {@link dev.runnel.flink.SiteRules}
 * says which rule a site has and how the job's own events become its inputs.
 *
 * <p>What it adds to the machines: readings that come out of order are put in order within a stated bound; those that come
 * later than that, or twice, go to a side output with their number, and are never lost silently; a checkpoint holds each
 * machine as its versioned text, so that another build, or another number of workers, goes on from it.
 *
 * <p>What it is not: part of the libraries, which know nothing of Flink; and no judgement of what should be one job.
 */
@NullMarked
package dev.runnel.flink;

import org.jspecify.annotations.NullMarked;
