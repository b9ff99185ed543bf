// A finding's threshold as the job writes it. It is read by the model, since a bush to make is held to the same ones.
export { ownThreshold, type Threshold } from "../model/evaluate/threshold.ts";
