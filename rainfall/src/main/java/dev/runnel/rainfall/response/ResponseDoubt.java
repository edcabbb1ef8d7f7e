package dev.runnel.rainfall.response;

import org.apiguardian.api.API;

/**
 * Why the response to a storm may be misread.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum ResponseDoubt {
    /** Rain is missing in the window, or the record of rain does not hold the whole storm. */
    RAIN_MISSING("rain missing"),

    /** Flow or dry weather flow is missing in the window. */
    FLOW_MISSING("flow missing"),

    /** The flow lay above its dry weather course by more than the allowance, or is not known, in the step before the storm. */
    WET_BEFORE("flow not at dry weather before"),

    /** The next storm began before the flow was back: what is left of the response belongs to both. */
    NEXT_STORM("next storm before the flow was back"),

    /** The flow was not back within the longest time, or before its record ended. */
    NOT_BACK("flow not back"),

    /** More flow than rain: another area drains to the site, the gauge reads low or lies off the storm, or flow or dry weather flow is wrong. */
    MORE_THAN_RAIN("more flow than rain"),

    /** The flow fell below dry weather by more than it rose: the dry weather flow is too high, or flow was lost upstream. */
    BELOW_DRY("flow below dry weather"),

    /** The flow rose by no more than the allowance: there is nothing whose lag or fall could be told. */
    NO_RESPONSE("no rise above the allowance"),

    /** The flow was greatest in the last step in which its peak was looked for: it may have risen on. */
    PEAK_AT_LIMIT("still rising at the limit"),

    /** No exponential fall could be fitted, or it explains less than 80 % of the variance of ln Q (limit chosen here). */
    NO_RECESSION("no clear recession");

    private final String words;

    ResponseDoubt(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
